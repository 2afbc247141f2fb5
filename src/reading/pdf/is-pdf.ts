/** Adobe PDF Reference 1.7, Appendix H, note 13: viewers take the header anywhere within the first 1024 bytes. */
export function isPdf(bytes: Uint8Array): boolean {
  return latin1(bytes.subarray(0, 1024)).includes("%PDF-");
}

function latin1(bytes: Uint8Array): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString("latin1");
}

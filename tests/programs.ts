import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** Programs that some suites check against, and the Debian package that brings each. */
const packages = {
  pdftk: "pdftk-java",
  qpdf: "qpdf",
  mutool: "mupdf-tools",
  pdftocairo: "poppler-utils",
  gs: "ghostscript",
  "/usr/lib/python3/dist-packages/pypdf": "python3-pypdf",
  "/usr/lib/python3/dist-packages/pikepdf": "python3-pikepdf",
  "/usr/lib/python3/dist-packages/fitz": "python3-fitz",
  "/usr/lib/python3/dist-packages/ezdxf": "python3-ezdxf",
  "/usr/lib/python3/dist-packages/openpyxl": "python3-openpyxl",
  "/usr/lib/libreoffice/program/libsclo.so": "libreoffice-calc",
  chromium: "chromium",
  openssl: "openssl",
  "/usr/share/doc/postgresql": "postgresql",
  swaks: "swaks",
  zip: "zip",
  tnef: "tnef",
  "/usr/sbin/dovecot": "dovecot-core",
  "/usr/lib/dovecot/imap": "dovecot-imapd",
  "/usr/lib/dovecot/lmtp": "dovecot-lmtpd",
  "/usr/lib/dovecot/modules/lib90_sieve_plugin.so": "dovecot-sieve",
  "/usr/sbin/postfix": "postfix",
  "/usr/sbin/dnsmasq": "dnsmasq-base",
} as const;

/**
 * Before the tests: as root on Debian, installs the programs that suites check against; elsewhere says
 * which are missing. A suite without its program is left out and says so.
 */
export function setup(): void {
  const missing = Object.entries(packages).filter(([program]) => !isThere(program));
  if (missing.length === 0) return;
  const wanted = missing.map(([, name]) => name);
  if (process.getuid?.() === 0 && isThere("apt-get")) {
    console.log(`Installing what some suites check against: ${wanted.join(" ")}`);
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    spawnSync("apt-get", ["update"], { env });
    spawnSync("apt-get", ["install", "-y", "--no-install-recommends", ...wanted], { env });
  }
  const left = missing.filter(([program]) => !isThere(program)).map(([, name]) => name);
  if (left.length > 0)
    console.warn(
      `Suites that check against these are left out, since they are not installed: ${left.join(" ")}`,
    );
}

function isThere(program: string): boolean {
  return program.startsWith("/")
    ? existsSync(program)
    : spawnSync("sh", ["-c", `command -v ${program}`]).status === 0;
}

/** Languages of legends, as BCP 47 names them, of which a dictionary comes with the project. */
export const languages = ["en-US", "en-GB", "en-CA", "fr", "es"] as const;

export type Language = (typeof languages)[number];

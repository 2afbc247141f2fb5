/** Languages of legends, named as in BCP 47. The project comes with a dictionary of each. */
export const languages = ["en-US", "en-GB", "en-CA", "fr", "es"] as const;

export type Language = (typeof languages)[number];

/** Reasons that fill `{reason}` of `picture-broken`. */
export const brokenPictureReasons = {
  cutShort: 'the file ends before the picture does',
  noSize: 'nothing in it says how large the picture is',
  unknown: 'it does not follow the rules of its format',
  decoder: (message: string) => `the decoder says: ${message}`,
} as const;

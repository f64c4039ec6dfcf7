/**
 * The name of a file, without its ending, for what people call a thing: `Osier 15` gives `osier-15`. Empty where the
 * name has no letter or digit that a file name can safely have.
 */
export function fileId(name: string): string {
  return (
    name
      .replace(/\.(yaml|md)$/i, '')
      // Letters and their accents taken apart, so that only the accents go: `é` gives `e`.
      .normalize('NFKD')
      .replace(/\p{Mark}/gu, '')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
  );
}

/**
 * The other way round, for a name that was typed like a file's: `osier-15` gives `Osier 15`. Other names stay as they
 * are.
 */
export function spokenName(name: string): string {
  const words = name.trim().replace(/\s+/g, ' ');
  if (fileId(words) !== words.replace(/\.(yaml|md)$/i, '')) return words;
  const spoken = fileId(words).replaceAll('-', ' ');
  return spoken.charAt(0).toUpperCase() + spoken.slice(1);
}

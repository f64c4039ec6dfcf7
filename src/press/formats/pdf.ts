import type { Format } from './format.ts';

/** The pages as a browser prints them. */
export const write: Format['write'] = (document, { print }) => print(document);

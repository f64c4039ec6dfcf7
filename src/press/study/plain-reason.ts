/** Said where this program has a mistake. */
export const mistake = 'This page made a mistake: the printed packet holds.';

/** The part of a message that tells the author what to write instead. */
const advice = /[:;.,] (?:take|write|leave|draw|put|ask|plan|add)\b.*$/is;

/**
 * What a directive says about the flight, for a student: without what it tells the author to do, and with the names
 * of the faults in place of their ids.
 */
export function plainReason(message: string, faultName: (id: string) => string | undefined): string {
  const words = message
    .replace(advice, '')
    .replace(/The fault `([^`]+)`/g, (_, id: string) => `The fault “${faultName(id) ?? id}”`)
    .replaceAll('`', '');
  return words.endsWith('.') ? words : `${words}.`;
}

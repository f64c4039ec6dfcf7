import type { Caution } from '../src/flight/terms/caution.ts';
import { type CautionSubject, cautionSentence } from '../src/words/cautions/caution-words.ts';
import { limitSource } from '../src/words/cautions/limit-sources.ts';
import { remedySentence } from '../src/words/cautions/remedy-words.ts';
import { aviation } from '../src/words/figures/aviation.ts';

/** A caution with its words beside its figures, in the units of the trade. */
export type SaidCaution = Omit<Caution, 'remedy' | 'source'> & {
  readonly message: string;
  readonly source: string;
  readonly remedy: string | undefined;
};

/** The cautions of a plan, each with what is said about it. */
export function saidCautions(
  plan: CautionSubject & { readonly cautions: readonly Caution[] },
): SaidCaution[] {
  return plan.cautions.map((caution) => saidCaution(caution, plan));
}

export function saidCaution(caution: Caution, subject: CautionSubject): SaidCaution {
  return {
    ...caution,
    message: cautionSentence(caution, subject, aviation),
    source: limitSource(caution, subject, aviation),
    remedy: remedySentence(caution, subject, aviation),
  };
}

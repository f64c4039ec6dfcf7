import type { ElementContent } from 'hast';
import type { PacketContext } from '../../../components/context.ts';
import { RequestError } from '../../flight/terms/errors.ts';
import { DirectiveError } from '../../lesson/component.ts';
import type { PageUnits } from '../../words/figures/page-units.ts';
import { requestSentence } from '../../words/refusals/request-words.ts';
import { markLive } from './mark-live.ts';
import { pageElements } from './page-nodes.ts';
import { mistake } from './plain-reason.ts';
import { componentOf } from './study-components.ts';
import type { StudyUse } from './study-data.ts';

/** A use made again for a setting: its elements, or why there are none, in the words of the core. */
export type Made =
  | { readonly elements: Element[]; readonly why?: undefined }
  | { readonly elements?: undefined; readonly why: string };

export function makeAgain(
  use: StudyUse,
  context: PacketContext,
  more: Readonly<Record<string, unknown>> = {},
): Made {
  const { n, attributes, label, ordinal } = use;
  try {
    const all = { ...(attributes as Record<string, unknown>), ...more };
    const output: ElementContent[] = componentOf(use).render({
      attributes: all,
      label,
      ordinal,
      children: [],
      context,
    });
    const elements = pageElements(markLive(output, { dataLive: String(n) }));
    for (const each of elements) each.setAttribute('data-study', 'moved');
    return { elements };
  } catch (error) {
    const why = reasonOf(error, context.units);
    // A mistake in the program must not leave figures of another setting on the page either.
    if (why === undefined) reportError(error);
    return { why: why ?? mistake };
  }
}

/** Undefined for a mistake in the program. */
function reasonOf(error: unknown, units: PageUnits): string | undefined {
  if (error instanceof RequestError) return requestSentence(error, units);
  return error instanceof DirectiveError || error instanceof RangeError ? error.message : undefined;
}

import type { Element } from 'hast';
import type { PacketContext } from '../../../components/context.ts';
import { flyableWords } from '../../words/cautions/flyable-words.ts';
import { gradeBands } from './grade-bands.ts';
import { packetCautions } from './packet-cautions.ts';

/**
 * The cautions on the first page of every packet, whatever its lesson says: a band for each limit that is passed, then the
 * standing cautions and those of this flight, of the airfield and of the school. A page with figures shows them first: the
 * directives alone do not bring them.
 */
export function pageCautions({ plan, request, school, units }: PacketContext): Element[] {
  const airfield = [...school.airfields.values()].find((each) => each === request.airfield);
  return [
    ...gradeBands(plan, units, flyableWords(plan, request, units)),
    packetCautions({ plan, units, school, rules: airfield?.rules ?? [] }, undefined),
  ];
}

import type { Edition, PacketContext } from '../../../components/context.ts';
import type { School } from '../../school/school.ts';
import { contentHeight, contentWidth, type Paper } from '../paper/paper.ts';
import { createNodeBoard } from '../printing/node-board.ts';

/** What the directives of one packet take their figures from. */
export function packetContext(
  school: School,
  { request, plan }: Pick<PacketContext, 'request' | 'plan'>,
  edition: Edition,
  paper: Paper,
): PacketContext {
  const { units } = school;
  return { plan, request, school, units, edition, board: createNodeBoard(), drawingRoom: drawingRoom(paper) };
}

/** A drawing is never so high that its page has no room left for the caption and some text. mm. */
function drawingRoom(paper: Paper): PacketContext['drawingRoom'] {
  return { width: contentWidth(paper), height: contentHeight(paper) * 0.62 };
}

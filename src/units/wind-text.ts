import { parseQuantity, QuantityError } from './quantity.ts';

/** Where the wind blows from (rad true, 0 <= from < 2 pi) and its speed (m/s). */
export interface Wind {
  readonly from: number;
  readonly speed: number;
}

const advice =
  'write the direction it blows from (0 to 360 degrees true) and its speed with a unit (kt, km/h, mph, m/s), such as `210/12kt`, or `calm`';

/**
 * A surface wind as a person writes it: `210/12kt`, `210°/12 kt`, `calm`.
 * @throws QuantityError
 */
export function parseWind(text: string): Wind {
  const trimmed = text.trim();
  if (trimmed.toLowerCase() === 'calm') return { from: 0, speed: 0 };
  const parts = /^(\d+(?:\.\d+)?)\s*(?:°|deg)?\s*\/\s*(.+)$/isu.exec(trimmed);
  if (!parts) throw new QuantityError(`\`${trimmed}\` is not a wind: ${advice}`);
  const degrees = Number(parts[1]);
  if (degrees > 360) {
    throw new QuantityError(`\`${trimmed}\`: the direction ${parts[1]} is more than 360 degrees: ${advice}`);
  }
  const speed = readSpeed(parts[2]!, trimmed);
  return { from: parseQuantity(`${parts[1]} deg`, 'bearing'), speed };
}

function readSpeed(written: string, wind: string): number {
  let speed: number;
  try {
    speed = parseQuantity(written, 'speed', '12 kt');
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new QuantityError(`\`${wind}\`: ${error.message}; or write the whole wind as \`210/12kt\``);
  }
  if (speed < 0) throw new QuantityError(`\`${wind}\`: a wind cannot blow at less than nothing: ${advice}`);
  return speed;
}

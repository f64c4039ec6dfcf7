import type { FaultMethod } from '../fault-method.ts';
import { atSpeed, type Parts } from '../parts.ts';

export const glideSpeed: FaultMethod<'glide-speed'> = {
  madeOn: 'downwind',
  make: (parts, { factor }) => faster(parts, factor),
};

function faster(parts: Parts, factor: number): Parts {
  const eas = (planned: number) => planned * factor;
  return {
    ...parts,
    start: { ...parts.start, eas: eas(parts.start.eas) },
    legs: atSpeed(parts.legs, eas),
    final: atSpeed(parts.final, eas),
  };
}

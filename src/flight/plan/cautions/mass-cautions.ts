import { dataOf, type Examined, type Found, told } from './examined.ts';

/** A flown mass outside of what the aircraft's data allow. */
export function massCautions({ aircraft, flown }: Examined): Found[] {
  const { most, least } = aircraft.mass;
  const value = flown.mass;
  const { reference } = aircraft.mass;
  if (most === undefined && value > reference + 1e-9) {
    const said = told(value, reference, 'kg', 'most');
    return [
      {
        code: 'mass',
        grade: 'worth-knowing',
        message: `The mass is ${said.value}, more than the ${said.limit} that the figures of the ${aircraft.name} are for; its data name no greatest mass.`,
        value,
        limit: reference,
        source: dataOf(aircraft),
      },
    ];
  }
  const over = most !== undefined && value > most + 1e-9;
  const limit = over ? most : least;
  if (limit === undefined || (!over && value >= limit - 1e-9)) return [];
  const said = told(value, limit, 'kg', over ? 'most' : 'least');
  return [
    {
      code: 'mass',
      message: `The mass is ${said.value}; the ${over ? 'most' : 'least'} that the ${aircraft.name} may be flown at is ${said.limit}.`,
      value,
      limit,
      source: dataOf(aircraft),
      remedy: `It would be within limits at ${said.limit} or ${over ? 'less' : 'more'}.`,
    },
  ];
}

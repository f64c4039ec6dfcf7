import { radiansPerDegree } from '../../units/factors.ts';
import { standardGravity } from '../air/constants.ts';
import { cosine } from '../numerics/steady-math.ts';

/** rad. A medium turn has no more bank than this (FAA-H-8083-3, chapter 3). */
export const mediumBank = 45 * radiansPerDegree;

/** Load factor in a coordinated level turn, 1/cos(bank) (FAA-H-8083-25, Aerodynamics of Flight). Bank in rad. */
export function loadFactor(bank: number): number {
  return 1 / cosine(bank);
}

/** Stall speed under a load factor: the wings-level one times the square root of the load factor (FAA-H-8083-25). */
export function stallSpeedUnder(load: number, stallSpeed: number): number {
  return stallSpeed * Math.sqrt(load);
}

/**
 * The load factor at which the wing stalls at a speed: the square of that speed over the wings-level stall speed
 * (FAA-H-8083-25).
 */
export function loadAtStall(speed: number, stallSpeed: number): number {
  return (speed / stallSpeed) ** 2;
}

/** Turn rate, rad/s, at a true airspeed in m/s: g tan(bank)/V. Holds in a steady gliding turn as well as in a level one. */
export function turnRate(tas: number, bank: number): number {
  return (standardGravity * Math.tan(bank)) / tas;
}

/** Radius through the air, m, of a level turn: V^2/(g tan(bank)). */
export function turnRadius(tas: number, bank: number): number {
  return (tas * tas) / (standardGravity * Math.tan(bank));
}

/**
 * How far the heading turns, rad, while the bank is taken off at a steady roll rate (rad/s): the roll-out must begin
 * this much before the heading wanted. The integral of g tan(bank)/V over the roll, -g ln(cos bank)/(V rate).
 */
export function rollOutLead(tas: number, bank: number, rollRate: number): number {
  return (-standardGravity * Math.log(cosine(bank))) / (tas * rollRate);
}

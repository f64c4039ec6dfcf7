/** Numbers from a seed: Marsaglia's xorshift on 32 bits, started by a multiplicative hash (Knuth). */
export class Chance {
  private x: number;

  constructor(seed: number) {
    this.x = Math.imul(seed + 1, 2654435761) | 1;
    for (let i = 0; i < 16; i++) this.share();
  }

  /** 0 to 1. */
  share(): number {
    this.x ^= this.x << 13;
    this.x ^= this.x >>> 17;
    this.x ^= this.x << 5;
    return (this.x >>> 0) / 2 ** 32;
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.share();
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.share() * (high - low + 1));
  }

  of<T>(choices: readonly T[]): T {
    return choices[Math.floor(this.share() * choices.length)]!;
  }

  happens(share: number): boolean {
    return this.share() < share;
  }
}

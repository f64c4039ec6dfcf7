import { describe, expect, it } from 'vitest';
import type { Plan } from '../../src/flight/terms/plan.ts';
import { flyTrial, renderBody, sayIn } from '../trial-packet.ts';

const trike = flyTrial();
const singleSeat: Plan = { ...trike, aircraft: { ...trike.aircraft, seats: 1 } };
const threeAxis: Plan = { ...trike, aircraft: { ...trike.aircraft, class: 'three-axis' } };

describe(':for[…] in a sentence', () => {
  const words =
    'Ease :for[the bar in]{class=weight-shift}:for[the *stick* forward]{class="three-axis glider"}.';

  it('stands only in packets of its classes', () => {
    expect(sayIn(words, trike)).toBe('Ease the bar in.');
    expect(sayIn(words, threeAxis)).toBe('Ease the <em>stick</em> forward.');
  });

  it('holds figures', () => {
    expect(sayIn(':for[the bar, at :key[downwind-key]]{class=weight-shift}', trike)).toBe(
      'the bar, at 1,000 ft',
    );
  });

  it('reports a mistake in its words, and a figure that is only typed like one', () => {
    const { messages } = renderBody(
      ':for[at :key[downwind-kee] and :keey[final]]{class=weight-shift}',
      trike,
    );
    expect(messages).toEqual([
      expect.stringMatching(/^4:14 .*did you mean `downwind-key`/),
      expect.stringMatching(/^4:32 No directive is called `keey`; did you mean `:key\[…\]`/),
    ]);
  });

  it('leaves no empty paragraph or bullet', () => {
    expect(sayIn('- :for[stick]{class=glider}\n- bar', trike).replace(/\n/g, '')).toBe(
      '<ul><li>bar</li></ul>',
    );
    expect(renderBody(':for[stick]{class=glider}', trike).html).toBe('');
  });
});

describe(':::for', () => {
  it('stands only in packets of its classes', () => {
    const body = ':::for{class=weight-shift}\nThe bar.\n:::\n\n:::for{class=three-axis}\nThe stick.\n:::';
    expect(renderBody(body, trike).html).toBe('<p>The bar.</p>');
    expect(renderBody(body, threeAxis).html).toBe('<p>The stick.</p>');
  });

  it('does not work out what it leaves out: a figure in it may be none of this flight', () => {
    const body = ':::for{class=glider}\nAt :key[overhead].\n:::';
    expect(renderBody(body, trike)).toEqual({ html: '', messages: [] });
  });

  it('tells one seat from two and more, and an aircraft that gives none has two', () => {
    const body = ':::for{seats=1}\nAlone.\n:::\n\n:::for{seats=2}\nTogether.\n:::';
    expect(renderBody(body, trike).html).toBe('<p>Together.</p>');
    expect(renderBody(body, singleSeat).html).toBe('<p>Alone.</p>');
    const four: Plan = { ...trike, aircraft: { ...trike.aircraft, seats: 4 } };
    expect(renderBody(body, four).html).toBe('<p>Together.</p>');
    expect(
      sayIn(':for[alone]{class=three-axis seats=1}:for[so]{class=weight-shift seats=1}', singleSeat),
    ).toBe('so');
    expect(renderBody(':::for{seats=3}\na\n:::', trike).messages).toEqual([
      expect.stringMatching(/^4:\d+ `seats` cannot be `3`; .*It can be `1`/),
    ]);
  });

  it('says which classes there are', () => {
    expect(renderBody(':::for{class=weightshift}\na\n:::', trike).messages).toEqual([
      expect.stringMatching(/^4:8 `class` cannot be `weightshift`; did you mean `weight-shift`\? It can be/),
    ]);
    expect(renderBody(':::for\na\n:::', trike).messages).toEqual([
      expect.stringMatching(/^4:4 `for` needs `class=…` in its braces: such as `class=weight-shift`/),
    ]);
    expect(renderBody('::for{class=glider}', trike).messages).toEqual([
      expect.stringMatching(/^4:1 `for` is written `:::for`.*, or `:for\[…\]` in a sentence$/),
    ]);
    expect(renderBody('a :for[]{class=weight-shift} b', trike).messages).toEqual([
      expect.stringMatching(/^4:3 `for` holds no words/),
    ]);
  });
});

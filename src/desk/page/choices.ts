import type { DeskMessage, PageChoices, PageSetting, WordsAnswer } from '../api.ts';
import { element } from './element.ts';
import { wordsFor } from './source-messages.ts';

type Name = keyof PageChoices;

interface Choice {
  readonly name: Name;
  readonly label: string;
  readonly control: HTMLSelectElement | HTMLInputElement;
}

const labels: Readonly<Record<Name, string>> = {
  aircraft: 'Aircraft',
  airfield: 'Airfield',
  runway: 'Runway',
  wind: 'Wind',
  power: 'Power',
  edition: 'Edition',
  paper: 'Paper',
};
const names = Object.keys(labels) as Name[];

/** The row above the page: what it is worked out for. What is not chosen there, the lesson and the school decide. */
export class ChoiceRow {
  readonly #choices: readonly Choice[];
  readonly #said: HTMLElement;
  #words: WordsAnswer | undefined;
  #setting: PageSetting | undefined;

  constructor(form: HTMLFormElement, said: HTMLElement, changed: () => void) {
    this.#said = said;
    this.#choices = names.map((name) => {
      const control =
        name === 'wind'
          ? element('input', { id: 'choice-wind', autocomplete: 'off', size: 9, spellcheck: false })
          : element('select', { id: `choice-${name}` });
      form.append(element('label', {}, element('span', {}, labels[name]), control));
      control.addEventListener('input', () => {
        if (name === 'airfield') this.#choice('runway').value = '';
        if (name === 'airfield') this.#fill();
        changed();
      });
      return { name, label: labels[name], control };
    });
    form.addEventListener('submit', (event) => event.preventDefault());
    this.#fill();
  }

  get chosen(): PageChoices {
    const given = this.#choices.map(({ name, control }) => [name, control.value.trim()] as const);
    return Object.fromEntries(given.filter(([, value]) => value !== ''));
  }

  /** What may be chosen; also after the files of the school have changed. */
  setWords(words: WordsAnswer): void {
    this.#words = words;
    this.#fill();
  }

  /** What holds where nothing is chosen. */
  setSetting(setting: PageSetting): void {
    this.#setting = setting;
    this.#fill();
  }

  /** Says at a control what is wrong with its choice, or worth knowing about it. */
  showMessages(messages: readonly DeskMessage[]): void {
    for (const { name, control } of this.#choices) {
      const own = messages.filter(({ choice }) => choice === name);
      control.toggleAttribute(
        'aria-invalid',
        own.some(({ severity }) => severity === 'error'),
      );
      if (own.length > 0) control.setAttribute('aria-describedby', this.#said.id);
      else control.removeAttribute('aria-describedby');
    }
    const text = messages
      .map((message) => `${labels[message.choice as Name] ?? message.choice}: ${wordsFor(message)}`)
      .join(' ');
    if (this.#said.textContent !== text) this.#said.textContent = text;
  }

  #choice(name: Name): HTMLSelectElement | HTMLInputElement {
    return this.#choices.find((choice) => choice.name === name)!.control;
  }

  #fill(): void {
    const { aircraft = [], airfields = [], papers = [] } = this.#words ?? {};
    const setting = this.#setting;
    const field = this.#choice('airfield').value || setting?.airfield;
    const named = (list: readonly { readonly id: string; readonly name: string }[]) =>
      list.map(({ id, name }) => [id, name] as const);
    const same = (list: readonly string[]) => list.map((each) => [each, each] as const);
    const isOwn = (name: Name) => this.#choice(name).value === '';
    /** What the lesson or the school chose, where nothing else was chosen. */
    const own = (name: 'aircraft' | 'airfield' | 'runway' | 'paper') =>
      isOwn(name) ? setting?.[name] : undefined;
    this.#options('aircraft', named(aircraft), own('aircraft'));
    this.#options('airfield', named(airfields), own('airfield'));
    this.#options('runway', same(airfields.find(({ id }) => id === field)?.runways ?? []), own('runway'));
    this.#options('power', [
      ['idle', 'engine idling'],
      ['stopped', 'engine stopped'],
    ]);
    this.#options('edition', [
      ['', 'student’s'],
      ['instructor', 'instructor’s'],
    ]);
    this.#options('paper', same(papers), own('paper'));
    const wind = this.#choice('wind') as HTMLInputElement;
    if (wind.value === '') wind.placeholder = /wind (.*)$/.exec(setting?.subject ?? '')?.[1] ?? '210/12kt';
  }

  #options(name: Name, options: readonly (readonly [string, string])[], own?: string): void {
    const select = this.#choice(name) as HTMLSelectElement;
    const all =
      name === 'edition'
        ? options
        : [
            ['', own ? `${options.find(([id]) => id === own)?.[1] ?? own} (as set)` : 'as set'] as const,
            ...options,
          ];
    const { value } = select;
    // Rebuilt only where it differs: otherwise a list that is open would close.
    const written = JSON.stringify(all);
    if (select.dataset.options === written) return;
    select.dataset.options = written;
    select.replaceChildren(...all.map(([id, label]) => element('option', { value: id }, label)));
    select.value = all.some(([id]) => id === value) ? value : '';
  }
}

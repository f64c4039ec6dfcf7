// Markdown as the reference pages need it. A page is a list of blocks.

export function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map(cell).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

/** Fenced so that no fence inside it ends it. */
export function fenced(language: string, text: string): string {
  return `\`\`\`\`${language}\n${text.trimEnd()}\n\`\`\`\``;
}

export function code(text: string): string {
  return `\`${text}\``;
}

export function page(blocks: readonly string[]): string {
  return `${blocks.join('\n\n')}\n`;
}

/** With a full stop where there was none. */
export function sentence(text: string): string {
  return /[.:!?]$/.test(text) ? text : `${text}.`;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

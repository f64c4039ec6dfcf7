import type { Element } from 'hast';
import { h } from 'hastscript';

/** A square to tick with a pencil; nothing for a reader who cannot see it. */
export function tickBox(millimetres = 3.4): Element {
  const size = `${millimetres}mm`;
  const style = `display:inline-block;width:${size};height:${size};border:.6pt solid #000;vertical-align:-.5mm;margin-right:1.5mm`;
  return h('span', { className: ['tick-box'], ariaHidden: 'true', style });
}

/** The bar lies over the top of the window, or over its foot: the page leaves room for it, also where a link leads. */
export function keepInSight(bar: HTMLElement): void {
  const root = document.documentElement;
  const place = () => {
    const isBelow = getComputedStyle(bar).bottom === '0px' && bar.getBoundingClientRect().top > 0;
    const room = `${bar.offsetHeight}px`;
    root.style.scrollPaddingTop = isBelow ? '' : room;
    root.style.scrollPaddingBottom = isBelow ? room : '';
    root.style.setProperty('--bar-top', isBelow ? '0px' : room);
    root.style.setProperty('--bar-foot', isBelow ? room : '0px');
  };
  new ResizeObserver(place).observe(bar);
  window.addEventListener('resize', place);
}

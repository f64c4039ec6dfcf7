import { expect, it } from 'vitest';
import { papers } from '../paper/paper.ts';
import { findBrowser } from '../printing/find-browser.ts';
import { withPrinter } from '../printing/print-pdf.ts';
import { findPages } from './find-pages.ts';

it('the page of each place that a link leads to is read from the printed book', async () => {
  const place = (id: string) => `<h1 id="${id}" style="break-before:page">${id}</h1>`;
  const html = `<!doctype html><html lang="en"><title>Book</title><body>
    <p><a href="#first">1</a> <a href="#second">2</a> <a href="#on-the-same">3</a> <a href="#third">4</a></p>
    ${place('first')}<p style="break-before:page">between</p>${place('second')}<p id="on-the-same">more</p>
    ${place('third')}<p id="led-to-by-none"></p></body></html>`;
  const how = { paper: papers.A4, date: new Date('2031-05-06T07:08:09Z'), draft: true };
  const pdf = await withPrinter(await findBrowser(), (printer) => printer.print(html, how));
  expect(Object.fromEntries(await findPages(pdf))).toEqual({
    first: 2,
    second: 4,
    'on-the-same': 4,
    third: 5,
  });
});

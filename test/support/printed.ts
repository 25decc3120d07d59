// Pages as they are printed.
import type { Page } from 'playwright-core';

/** ISO 216: A4 is 210 × 297 mm; Letter is 8.5 × 11 in. */
export const PAPERS = [['A4', 210, 297], ['Letter', 215.9, 279.4]] as const;
const MM = 96 / 25.4;

/** Width and height of each page in millimetres, from the PDF itself (ISO 32000-1, 7.7.3: every page has a MediaBox, in points of 1/72 in). */
export function pageSizes(pdf: Buffer): (readonly [width: number, height: number])[] {
  const text = pdf.toString('latin1');
  const sheets = text.match(/\/Type\s*\/Page\b(?!s)[^]*?endobj/g) ?? [];
  return sheets.map((one) => {
    const [, w, h] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/.exec(one) ?? [];
    return [(Number(w) / 72) * 25.4, (Number(h) / 72) * 25.4] as const;
  });
}

/** Texts that would reach beyond the margins of the paper, or out of the box that holds them. */
export async function cutOff(page: Page, widthInMm: number): Promise<string[]> {
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: Math.floor(widthInMm * MM), height: 1000 });
  return await page.evaluate<string[]>(CUT_OFF);
}

/** Runs in the page; as text, since nothing here knows the types of a browser. */
const CUT_OFF = `(() => {
  const edge = document.documentElement.clientWidth + 1;
  return [...document.querySelectorAll('body *')].flatMap((one) => {
    const { left, right } = one.getBoundingClientRect();
    const isCut = right > edge || left < -1 || (one.clientWidth > 0 && one.scrollWidth > one.clientWidth + 1);
    return isCut ? [one.tagName + ' ' + (one.textContent ?? '').slice(0, 40) + ' ' + left + ' to ' + right] : [];
  });
})()`;

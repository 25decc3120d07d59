/** One to three digits, the first of them no nought, a point and exactly three more. */
const THOUSANDS = /(?<![\d.])([1-9]\d{0,2})\.(\d{3})(?![\d.])/;
const ALL_THOUSANDS = /(?<![\d.])([1-9]\d{0,2})\.(\d{3})(?![\d.])/g;

/** Whether a point in figures may well divide thousands, as in 1.250. */
export function mayDivideThousands(written: string): boolean {
  return THOUSANDS.test(written);
}

/** Figures that could mean thousands, written so that each can mean one thing only. */
export function bothReadings(written: string): { readonly thousands: string; readonly decimals: string } {
  return {
    thousands: written.replace(ALL_THOUSANDS, '$1$2'),
    decimals: written.replace(ALL_THOUSANDS, (figure) => (figure.endsWith('0') ? figure.slice(0, -1) : `${figure}0`)),
  };
}

/** Numbers as the index files have them: as text, a character each (sitegen/finding/columns.py). */

export const FIRST = 35;
export const MIDDLE = 79;

/** A pitch class. @param {number} number */
export const mod = (number) => ((number % 12) + 12) % 12;

/** 0, 1, 2, 3 as 0, -1, 1, -2. @param {number} number */
export const signed = (number) => (number % 2 ? -(number + 1) / 2 : number / 2);

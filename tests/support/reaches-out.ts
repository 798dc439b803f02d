/** Ways out of the pure part; each must fail in the bare world of bare-library.ts. */
export const environment = (): unknown => process.env;
export const printing = (): void => console.log("x");
export const timers = (): unknown => setTimeout(() => undefined, 0);
export const addresses = (): unknown => new URL("http://127.0.0.1");
export const bytes = (): unknown => new TextEncoder();
export const screen = (): unknown => document.title;
export const network = (): unknown => fetch("http://127.0.0.1");
export const clock = (): unknown => Date.now();
export const clockByNew = (): unknown => new Date();
export const randomness = (): number => Math.random();

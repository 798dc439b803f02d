import { expect, type Page } from "@playwright/test";
import { axeFindings } from "./case-steps.ts";

/** Least size of a touch target in CSS pixels: our own design; WCAG 2.2 target size (enhanced) asks for 44. */
const TARGET = 48;

/** Buttons, fields and links that a thumb must hit, smaller than the target; words within a sentence are let off. */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const found: string[] = [];
    const all = document.querySelectorAll<HTMLElement>(
      "button, select, textarea, summary, label.tick, a, input:not([type=checkbox])",
    );
    for (const element of all) {
      if (!element.checkVisibility() || element.closest("p, .hidden") !== null) continue;
      if (element.matches(".skip, .hidden")) continue;
      const target = element.querySelector(".mark-reach") ?? element;
      const { width, height } = target.getBoundingClientRect();
      // Half a pixel of rounding.
      if (height < least - 0.5 || width < least - 0.5)
        found.push(
          `${element.tagName} "${element.textContent?.slice(0, 40)}" ${width.toFixed(0)}x${height.toFixed(0)}`,
        );
    }
    return found;
  }, TARGET);
}

/** Width by which the page is wider than the screen. */
function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Fails when a screen breaks a rule of accessibility, is wider than its window, or has a target too small to hit. */
export async function look(page: Page, screen: string): Promise<void> {
  expect(await axeFindings(page), screen).toEqual([]);
  expect(await overhang(page), screen).toBe(0);
  expect(await tooSmall(page), screen).toEqual([]);
}

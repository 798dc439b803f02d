const STYLESHEET = /<link rel="stylesheet" href="([^"]+)"/;

/**
 * What the server gives out when it could not answer: plain, without scripts, with the stylesheet of the other pages.
 *
 * The framework's own page for this brings styles with it that the content security policy refuses.
 * Shape   styled: a page of the same build, for the address of its stylesheet.
 */
export function serverErrorPage(styled) {
  const sheet = STYLESHEET.exec(styled)?.[1];
  if (sheet === undefined) throw new Error("the page to take the stylesheet from has none");
  return `<!DOCTYPE html><html lang="en-GB"><head><meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/><title>Cornerwise did not answer</title><link rel="stylesheet" href="${sheet}"/></head><body><main id="main" class="sheet"><h1>Cornerwise did not answer</h1><p>Something went wrong on the server. Everything entered is kept on your device.</p><p><a class="button" href="/">All cases</a></p></main></body></html>\n`;
}

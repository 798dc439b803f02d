import { describe, expect, test } from "vitest";
import { mailAddress } from "../../app/text/mail-address.ts";
import { customerMessage, type MessageParts, plannedTime } from "../../lib/words/customer-message.ts";
import { shippedKnowledge } from "../support/shipped-knowledge.ts";

/* The message of the desk. What it must hold is the task's own list: what to do, stop signs, how long, what to bring. */

const parts: MessageParts = {
  customer: "Ida Marlowe (invented)",
  vehicle: "demo saloon",
  plate: "DEMO 101",
  told: ["It knocks over\ncobbles & “setts” 100 %."],
  advice: "Leave it standing for now",
  say: "Please leave it standing.",
  comes: "waits",
  stopIf: ["it gets worse", "something smokes"],
  visit: { p50: 61, p90: 140 },
  signed: "Harbour Lane Garage (invented)",
};
const ways = ["fetched", "waits", "brought"] as const;

describe("a message to a customer", () => {
  test.each(ways)("says what to do, when to stop, how long and what to bring: %s", (comes) => {
    const { subject, body } = customerMessage({ ...parts, comes });
    expect(subject).toBe("Your demo saloon, DEMO 101: Leave it standing for now");
    expect(body).toContain("Hello Ida Marlowe (invented),\n");
    expect(body).toContain('You said: "It knocks over cobbles & “setts” 100 %."');
    expect(body).toContain("Please leave it standing.");
    for (const sign of parts.stopIf) expect(body).toContain(`- ${sign}\n`);
    expect(body).toContain("about 1 hour 15 minutes");
    expect(body).toContain("up to 2 hours 30 minutes");
    expect(body).toMatch(/wheel nuts/);
    expect(body.trimEnd().endsWith("Harbour Lane Garage (invented)")).toBe(true);
  });

  test("needs nothing but the advice, and is labelled when the case is invented", () => {
    const bare = customerMessage({
      told: [" \n"],
      advice: "Do not drive it",
      say: "Please do not drive it.",
      comes: "fetched",
      stopIf: [],
      invented: true,
    });
    expect(bare.subject).toBe("Your car: Do not drive it");
    expect(bare.body).toMatch(
      /^Hello,\n\nThank you for telling us about your car\.\n\nPlease do not drive it\./,
    );
    expect(bare.body).not.toContain("You said");
    expect(bare.body).not.toContain("undefined");
    expect(bare.body).toContain("Invented case");
  });

  test("quotes long words in part, cut between words, on one line", () => {
    const long = `${"a knock and then a scrape ".repeat(40)}end`;
    const { body } = customerMessage({ ...parts, told: [long] });
    const quoted = /You said: "(.*) \.\.\."/.exec(body)?.[1] ?? "";
    expect(quoted.length).toBeGreaterThan(100);
    expect(quoted.length).toBeLessThanOrEqual(300);
    expect(long.startsWith(`${quoted} `)).toBe(true);
  });

  test("never calls a car fit or safe, names no part, and keeps its sentences short, with the shipped words too", () => {
    const { advice, parts: records } = shippedKnowledge();
    const levels = advice?.levels ?? [];
    expect(levels.length).toBeGreaterThan(1);
    for (const comes of ways)
      for (const level of levels) {
        const { customer: _, vehicle: __, plate: ___, ...rest } = parts;
        const { body } = customerMessage({
          ...rest,
          told: [],
          advice: level.name,
          say: level.say,
          stopIf: [],
          comes,
        });
        expect(body).not.toMatch(/\bsafe(ly)?\b|\bfine\b|\bno danger\b/i);
        // Everybody's words, though the trade has them too.
        for (const { name, otherNames } of records)
          for (const word of [name, ...otherNames])
            if (!["wheel", "wheels"].includes(word))
              expect(` ${body.toLowerCase()} `, word).not.toContain(` ${word.toLowerCase()} `);
        // Plain-language guidance for public writing takes 25 words as the most for a sentence (from memory).
        for (const sentence of body.split(/[.:?]\s|\n/))
          expect(sentence.split(/\s+/).filter(Boolean).length, sentence).toBeLessThanOrEqual(25);
      }
  });

  test("time is planned in quarters of an hour, never rounded down", () => {
    expect(plannedTime(0)).toBe("15 minutes");
    expect(plannedTime(45)).toBe("45 minutes");
    expect(plannedTime(46)).toBe("1 hour");
    expect(plannedTime(135.5)).toBe("2 hours 30 minutes");
    const same = customerMessage({ ...parts, visit: { p50: 50, p90: 55 } });
    expect(same.body).toContain("about 1 hour ");
    expect(same.body).not.toContain("up to");
  });
});

describe("the address of a mail", () => {
  test("carries subject and body whole, read back by the platform's own parser of addresses", () => {
    const message = customerMessage(parts);
    const address = mailAddress(message);
    const read = new URL(address);
    expect(read.protocol).toBe("mailto:");
    // A plus stands for itself in such an address (RFC 6068, section 5), so it is not read as a form would be.
    const fields = new Map(
      read.search
        .slice(1)
        .split("&")
        .map((field) => {
          const [name = "", value = ""] = field.split("=");
          return [name, decodeURIComponent(value)] as const;
        }),
    );
    expect(fields.get("subject")).toBe(message.subject);
    expect(fields.get("body")).toBe(message.body.replaceAll("\n", "\r\n"));
  });

  test("breaks lines by %0D%0A (RFC 6068, section 5) and takes a paste that was cut in the middle of a sign", () => {
    expect(mailAddress({ subject: "a+b & c?", body: "one\ntwo\r\nthree" })).toBe(
      "mailto:?subject=a%2Bb%20%26%20c%3F&body=one%0D%0Atwo%0D%0Athree",
    );
    expect(mailAddress({ subject: "", body: "cut \uD83D" })).toBe("mailto:?subject=&body=cut%20%EF%BF%BD");
  });
});

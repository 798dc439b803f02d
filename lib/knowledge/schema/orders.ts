import { z } from "zod";
import { Basis, Id, Line, Logic, Paragraph } from "./common.ts";

/** What turns: with the road wheels, with the propshaft, with the engine. */
export const Shaft = z.enum(["wheel", "propshaft", "engine"]);
export type Shaft = z.infer<typeof Shaft>;

/** Vibrations for each turn of the shaft. */
const Order = z.number().positive().max(12);

/** `orders.json`: which vibrations are listed for what turns, and which finding each of them is. */
export const Orders = z.strictObject({
  about: Paragraph,
  shafts: z
    .array(
      z.strictObject({
        shaft: Shaft,
        name: Line,
        orders: z.array(Order).min(1).max(16),
        /** JsonLogic over the car; left out: every car has it. */
        when: Logic.optional(),
        /** How far a measured frequency may lie from the worked one and still be it, as a share of the latter. */
        tolerance: z.number().positive().max(0.2),
        /** How to tell its vibrations from those of another shaft that happen to be as fast. */
        apart: Paragraph,
      }),
    )
    .min(1),
  findings: z
    .array(
      z.strictObject({
        shaft: Shaft,
        /** "firing": one for each cylinder that fires in a turn; "half": every odd half but the firing order. */
        order: z.union([Order, z.enum(["firing", "half"])]),
        observation: Id,
        basis: Basis,
      }),
    )
    .min(1),
});
export type Orders = z.infer<typeof Orders>;

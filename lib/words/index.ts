export { customerMessage, type Message, type MessageParts, plannedTime } from "./customer-message.ts";
export type { Proposal } from "./proposals.ts";
export { type ReadOptions, readText, sidesByTraffic } from "./reader.ts";
export { type Found, searchAll, searchChecks, searchFindings, searchParts } from "./search.ts";
export type { SideWords, Traffic } from "./traffic-sides.ts";

"use client";
import { useEffect, useState } from "react";
import { countUnsigned, takeUnsignedOver } from "../../store/unsigned-cases.ts";
import { wakeSync } from "../../sync/sync.ts";
import { messageOf } from "../../text/message-of.ts";

/** Offers cases that were made on this device before anybody signed in. */
export function UnsignedCases() {
  const [count, setCount] = useState(0);
  const [failed, setFailed] = useState<string>();
  useEffect(() => {
    countUnsigned().then(setCount, () => undefined); // no other database: nothing to offer
  }, []);
  if (count === 0) return null;
  const take = async () => {
    try {
      await takeUnsignedOver();
      setCount(0);
      wakeSync();
    } catch (error) {
      setFailed(messageOf(error));
    }
  };
  const one = count === 1;
  return (
    <div className="notice">
      <p>
        {one ? "1 case was" : `${count} cases were`} made on this device without signing in. Taken over,{" "}
        {one ? "it becomes yours and goes" : "they become yours and go"} to the workshop&apos;s server.
      </p>
      <button type="button" onClick={() => void take()}>
        Take {one ? "it" : "them"} over
      </button>
      {failed !== undefined && (
        <p className="trouble" role="alert">
          Not taken over; nothing is lost: {failed}
        </p>
      )}
    </div>
  );
}

/**
 * Pieces as a stream that takes the next one only when there is room for it.
 *
 * The first is waited for, so that what is wrong from the start can still be said as a problem.
 */
export async function piecesStream(pieces: AsyncGenerator<Uint8Array>): Promise<ReadableStream<Uint8Array>> {
  let next = await pieces.next();
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      if (next.done === true) {
        controller.close();
        return;
      }
      controller.enqueue(next.value);
      next = await pieces.next();
    },
    async cancel() {
      await pieces.return(undefined);
    },
  });
}

import type { Metadata } from "next";
import { Suspense } from "react";
import { BoardScreen } from "../../ui/board/board-screen.tsx";

export const metadata: Metadata = { title: "How the class did" };

export default function BoardPage() {
  return (
    <Suspense>
      <BoardScreen />
    </Suspense>
  );
}

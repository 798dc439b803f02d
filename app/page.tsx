import { CasesScreen } from "./ui/cases/cases-screen.tsx";

export default function Home() {
  return <CasesScreen />;
}

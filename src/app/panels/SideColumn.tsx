/** Numbers beside the picture: what fails, then runners, bends, groups and gaps. */
import './side.css';
import { BalanceCard } from './BalanceCard';
import { BendPanel } from './BendPanel';
import { GapPanel } from './GapPanel';
import { GroupPanel } from './GroupPanel';
import { NoticeCard } from './NoticeCard';
import { ProblemPanel } from './ProblemPanel';
import { PastPanel } from './past/PastPanel';
import { RunnerPanel } from './RunnerPanel';

export function Messages() {
  return (
    <>
      <NoticeCard />
      <BalanceCard />
    </>
  );
}

export function Tables() {
  return (
    <>
      <RunnerPanel />
      <BendPanel />
      <GroupPanel />
      <GapPanel />
      <PastPanel />
    </>
  );
}

export { ProblemPanel };

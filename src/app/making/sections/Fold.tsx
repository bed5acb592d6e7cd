/** One section of the Make leaf, which remembers whether it is open. */
import type { ReactNode } from 'react';
import { FoldingSection } from '../../parts/FoldingSection';
import { type MakeSection, useMakeLook } from '../look';

type Props = {
  readonly section: MakeSection;
  readonly name: string;
  readonly says?: string | undefined;
  readonly fails?: boolean;
  readonly busy?: boolean;
  readonly children: ReactNode;
};

export function Fold({ section, ...shown }: Props) {
  const open = useMakeLook((s) => s.open.has(section));
  const setOpen = useMakeLook((s) => s.setOpen);
  return <FoldingSection {...shown} open={open} onOpen={(now) => setOpen(section, now)} mark={section} />;
}

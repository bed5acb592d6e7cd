/** Lock and hide, for one runner's row. Locked is the design's; hidden is only how it is looked at. */
import { useDocument } from '../document';
import { lockRunners } from '../inspect/inspectActions';
import { useIsHidden, useViewState } from '../viewState';
import { Icon } from './Icon';

export function RunnerToggles({ id }: { readonly id: string }) {
  const locked = useDocument((s) => s.design?.runners.find((runner) => runner.id === id)?.locked === true);
  const hidden = useIsHidden({ kind: 'runner', id });
  return (
    <span className="toggle-pair">
      <Toggle
        name={locked ? `Unlock ${id}` : `Lock ${id}`}
        on={locked}
        icon={locked ? 'locked' : 'unlocked'}
        act={() => lockRunners([id], !locked)}
      />
      <Toggle
        name={hidden ? `Show ${id}` : `Hide ${id}`}
        on={hidden}
        icon={hidden ? 'hidden' : 'seen'}
        act={() => useViewState.getState().setHidden([`runner/${id}`], !hidden)}
      />
    </span>
  );
}

type ToggleProps = {
  readonly name: string;
  readonly on: boolean;
  readonly icon: Parameters<typeof Icon>[0]['name'];
  act(): void;
};

function Toggle({ name, on, icon, act }: ToggleProps) {
  return (
    <button
      type="button"
      className={`toggle${on ? ' on' : ''}`}
      aria-label={name}
      title={name}
      onClick={(event) => {
        event.stopPropagation();
        act();
      }}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <Icon name={icon} />
    </button>
  );
}

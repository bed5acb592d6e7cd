/** Light or dark; the system decides until this is used. */
import { useThemeStore } from '../theme';
import { Icon } from './Icon';

export function ThemeButton() {
  const { theme, choose } = useThemeStore();
  const other = theme === 'light' ? 'dark' : 'light';
  return (
    <button
      type="button"
      className="button icon"
      aria-label={`Use the ${other} theme`}
      title={`Use the ${other} theme`}
      onClick={() => choose(other)}
    >
      <Icon name={theme === 'light' ? 'moon' : 'sun'} />
    </button>
  );
}

/**
 * Light and dark: the tokens the style sheets use, kept here as data so that their contrast is tested, and the choice
 * between them. The system's preference counts until the user chooses; the choice is remembered in this browser.
 */
import { create } from 'zustand';

export type Theme = 'light' | 'dark';

/** `paper` is the page, `sheet` what lies on it, `well` what is sunk in; `ink` text, `quiet` lesser text, `rule` lines. */
export const TOKENS = {
  light: {
    paper: '#f3f0e9',
    sheet: '#fbf9f5',
    well: '#e9e5dc',
    ink: '#22262a',
    quiet: '#585d61',
    rule: '#d3cdc0',
    edge: '#85817a',
    strong: '#22262a',
    onStrong: '#fbf9f5',
    accent: '#00736b',
    onAccent: '#ffffff',
    fail: '#bb1e2d',
    onFail: '#ffffff',
  },
  dark: {
    paper: '#17191c',
    sheet: '#1f2226',
    well: '#2a2e33',
    ink: '#eceae4',
    quiet: '#aeb2b5',
    rule: '#3a3f45',
    edge: '#858b91',
    strong: '#eceae4',
    onStrong: '#17191c',
    accent: '#3fd0bf',
    onAccent: '#0d1f1d',
    fail: '#ff8078',
    onFail: '#2a0505',
  },
} as const satisfies Record<Theme, Record<string, string>>;

const KEY = 'evenrun.theme';
const DARK = '(prefers-color-scheme: dark)';

type ThemeState = {
  readonly theme: Theme;
  /** False while the system decides. */
  readonly chosen: boolean;
  choose(theme: Theme): void;
};

export const useThemeStore = create<ThemeState>()((set) => ({
  theme: remembered() ?? systemTheme(),
  chosen: remembered() !== null,
  choose(theme) {
    try {
      localStorage.setItem(KEY, theme);
    } catch {
      // Storage may be refused; the choice then lasts as long as the page.
    }
    set({ theme, chosen: true });
  },
}));

/** The theme in force. */
export const useTheme = (): Theme => useThemeStore((s) => s.theme);

/** Writes the tokens where style sheets see them and follows the system; call once, before the first paint. */
export function startTheme(): void {
  const show = (theme: Theme) => {
    const root = document.documentElement;
    root.dataset.theme = theme;
    root.style.colorScheme = theme;
    for (const [name, value] of Object.entries(TOKENS[theme])) root.style.setProperty(`--${name}`, value);
  };
  show(useThemeStore.getState().theme);
  useThemeStore.subscribe((s) => show(s.theme));
  matchMedia(DARK).addEventListener('change', () => {
    if (!useThemeStore.getState().chosen) useThemeStore.setState({ theme: systemTheme() });
  });
}

function systemTheme(): Theme {
  return typeof matchMedia === 'function' && matchMedia(DARK).matches ? 'dark' : 'light';
}

function remembered(): Theme | null {
  try {
    const kept = localStorage.getItem(KEY);
    return kept === 'light' || kept === 'dark' ? kept : null;
  } catch {
    return null;
  }
}

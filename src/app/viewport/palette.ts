/** Colours of the 3D view that no other part of the page uses; runners' paints and the accents come from the app's own. */
import { mix } from '../contrast';
import { type Theme, TOKENS } from '../theme';

export type Palette = {
  readonly theme: Theme;
  readonly ink: string;
  /** Dimension lines: as dark as text, since they cross what is lit in the accent. */
  readonly dimension: string;
  readonly accent: string;
  readonly fail: string;
  readonly steel: string;
  /** The head: cast, not polished. */
  readonly casting: string;
  readonly gasket: string;
  readonly throat: string;
  readonly ghost: string;
  readonly ghostFace: number;
  readonly ghostRim: number;
  readonly ghostEdge: number;
  readonly grid: string;
  readonly gridStrength: number;
  /** Brightness of the surroundings that the steel mirrors. */
  readonly gleam: number;
};

export const PALETTES: Record<Theme, Palette> = {
  light: {
    theme: 'light',
    ink: '#2b2a28',
    dimension: TOKENS.light.ink,
    accent: TOKENS.light.accent,
    fail: TOKENS.light.fail,
    steel: '#b9bab8',
    casting: '#aea89b',
    gasket: '#6d6a64',
    throat: '#3c3935',
    ghost: '#6f6a5e',
    ghostFace: 0.035,
    ghostRim: 0.16,
    ghostEdge: 0.3,
    grid: '#8d8676',
    gridStrength: 0.34,
    gleam: 1.15,
  },
  dark: {
    theme: 'dark',
    ink: '#0b0c0e',
    dimension: TOKENS.dark.ink,
    accent: TOKENS.dark.accent,
    fail: TOKENS.dark.fail,
    steel: '#a1a6aa',
    casting: '#5d6267',
    gasket: '#2c2f33',
    throat: '#0e0f11',
    ghost: '#a9b4bd',
    ghostFace: 0.03,
    ghostRim: 0.16,
    ghostEdge: 0.26,
    grid: '#8b97a3',
    gridStrength: 0.22,
    gleam: 0.85,
  },
};

/**
 * Steel that has taken a temper colour: the paint, with enough of the metal left to shine. Paints for dark paper are pale;
 * over darker metal they keep their hue where the light falls.
 */
export const tempered = (paint: string, palette: Palette): string =>
  palette.theme === 'light' ? mix(paint, palette.steel, 0.6) : mix(paint, '#4d5358', 0.66);

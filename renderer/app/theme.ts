import { useEffect } from 'react';
import type { SettingsFields } from '#shared-types/settings.ts';
import { useAnswer } from '../api/queries.ts';

const darkPreferred = window.matchMedia('(prefers-color-scheme: dark)');

function showTheme(theme: SettingsFields['theme']): void {
  const dark = theme === 'dark' || (theme === 'system' && darkPreferred.matches);
  document.documentElement.dataset.theme = dark ? 'dark' : 'light';
}

/** Before the settings are read the system decides. */
export function showSystemTheme(): void {
  showTheme('system');
}

/** Keeps the page in the theme of the settings; where that is the system's, follows the system. */
export function useTheme(): void {
  const theme = useAnswer('settings.read', {}).data?.theme ?? 'system';
  useEffect(() => {
    const show = () => showTheme(theme);
    show();
    darkPreferred.addEventListener('change', show);
    return () => darkPreferred.removeEventListener('change', show);
  }, [theme]);
}

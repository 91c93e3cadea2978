import { t } from '../../analysis/language/t.ts';

/** What the map's library says by itself, by the keys it has for it. */
export function mapLocale(): Readonly<Record<string, string>> {
  return {
    'Map.Title': t`Map`,
    'CooperativeGesturesHandler.WindowsHelpText': t`Use Ctrl + scroll to zoom the map`,
    'CooperativeGesturesHandler.MacHelpText': t`Use ⌘ + scroll to zoom the map`,
    'CooperativeGesturesHandler.MobileHelpText': t`Use two fingers to move the map`,
  };
}

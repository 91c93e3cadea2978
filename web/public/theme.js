// Sets the theme kept from an earlier visit before anything is painted. The key is that of web/state/theme.svelte.ts.
try {
  const theme = localStorage.getItem('citrus-winters-theme');
  if (theme === 'light' || theme === 'dark') document.documentElement.dataset.theme = theme;
} catch {
  // No storage: the system decides.
}

/** Keeps a copy of the page for days without a network. Where that is not to be had the page works as before. */
export function startOffline(): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('./offline.js').catch(() => undefined);
}

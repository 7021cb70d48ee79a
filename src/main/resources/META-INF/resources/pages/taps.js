// Says so when a tap did not reach the server.
const shown = hidden => {
  const notice = document.getElementById('not-sent');
  if (notice) {
    notice.hidden = hidden;
    if (!hidden) notice.scrollIntoView({ block: 'nearest' });
  }
};
document.addEventListener('htmx:sendError', () => shown(false));
document.addEventListener('htmx:responseError', () => shown(false));
document.addEventListener('htmx:afterSwap', () => shown(true));

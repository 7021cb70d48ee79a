// What the pages do beyond forms and links; everything works without it.
document.addEventListener('keydown', event => {
  const typing = event.target.closest('input, textarea, select');
  if (event.key === '/' && !typing && !event.ctrlKey && !event.metaKey && !event.altKey) {
    document.querySelector('[data-key="/"]')?.focus();
    event.preventDefault();
  }
});

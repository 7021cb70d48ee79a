// A result is opened by its key, 1 to 9, or by Enter on the first.
const results = document.querySelectorAll('[data-result]');
results[0]?.focus();
document.addEventListener('keydown', event => {
  const typing = event.target.closest('input, textarea, select');
  if (typing || event.ctrlKey || event.metaKey || event.altKey || !/^[1-9]$/.test(event.key)) {
    return;
  }
  document.querySelector(`[data-result="${event.key}"]`)?.click();
});

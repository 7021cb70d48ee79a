// A button that copies what stands in a field; there is none without this script.
for (const button of document.querySelectorAll('[data-copy]')) {
  const field = document.getElementById(button.dataset.copy);
  field.addEventListener('focus', () => field.select());
  button.hidden = !navigator.clipboard;
  button.addEventListener('click', () =>
    navigator.clipboard.writeText(field.value).then(() => { button.textContent = button.dataset.copied; }));
}

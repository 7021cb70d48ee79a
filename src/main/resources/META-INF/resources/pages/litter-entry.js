// Counting at the rack: steppers, what is still to sort, a row for each of the live-born. Drafts are kept by unsent.js.
(() => {
  const CLASSES = ['liveBorn', 'stillborn', 'partDeveloped', 'unfertilised'];

  function begin(form) {
    if (!form || form.dataset.begun) return;
    form.dataset.begun = 'yes';
    const field = name => form.elements[name];
    const count = name => Math.max(0, parseInt(field(name)?.value, 10) || 0);

    form.querySelectorAll('[data-step]').forEach(button => {
      button.hidden = false;
      button.addEventListener('click', () => {
        const input = button.parentElement.querySelector('input');
        const next = (parseInt(input.value, 10) || 0) + Number(button.dataset.step);
        input.value = Math.min(Number(input.max), Math.max(Number(input.min), next));
        input.dispatchEvent(new Event('input', { bubbles: true }));
      });
    });

    form.querySelectorAll('[data-open-if-filled]').forEach(details => {
      details.open ||= [...details.querySelectorAll('input, textarea')].some(input =>
        input.type === 'checkbox' ? input.checked : input.value && input.value !== '0');
    });

    const tie = form.querySelector('[data-tie]');
    const off = () => count('ovaFound') - CLASSES.reduce((sum, name) => sum + count(name), 0);
    const say = (words, number) => { tie.textContent = words.replace('#', number); };
    function tell() {
      const found = count('ovaFound');
      const left = off();
      tie.classList.remove('adds', 'off', 'held');
      if (!found && !left) say(tie.dataset.count);
      else if (!left) { say(tie.dataset.adds, found); tie.classList.add('adds'); }
      else if (left > 0) say(tie.dataset.left, left);
      else { say(left === -1 ? tie.dataset.oneOver : tie.dataset.over, -left); tie.classList.add('off'); }
    }

    // one missing: which? Nothing is sent before it adds up
    form.addEventListener('submit', event => {
      const left = off();
      if (left || !count('ovaFound')) {
        event.preventDefault();
        event.stopImmediatePropagation();
        tie.classList.add('held');
        if (left > 0) say(left === 1 ? tie.dataset.oneMissing : tie.dataset.missing, left);
        else if (left < 0) say(left === -1 ? tie.dataset.oneOver : tie.dataset.over, -left);
        field('ovaFound').focus({ preventScroll: true });
        tie.scrollIntoView({ block: 'center' });
      }
    }, true);

    const rows = form.querySelector('#one-by-one');
    const blank = document.getElementById('young-row');
    function fitRows() {
      if (!rows || !blank) return;
      const wanted = Math.min(60, count('liveBorn'));
      const filled = row => [...row.querySelectorAll('input, select')].some(input => input.value);
      while (rows.children.length < wanted) {
        const row = blank.content.firstElementChild.cloneNode(true);
        const place = rows.children.length;
        for (const part of [row, ...row.querySelectorAll('*')]) {
          for (const attribute of part.attributes) {
            if (attribute.value.includes('#')) {
              attribute.value = attribute.value.replace('##', place + 1).replace('#', place);
            }
          }
        }
        row.querySelector('.place').textContent = place + 1;
        rows.append(row);
      }
      while (rows.children.length > wanted && !filled(rows.lastElementChild)) rows.lastElementChild.remove();
      document.getElementById('one-by-one-none').hidden = rows.children.length > 0;
    }

    function showMet() {
      const dam = field('dam')?.value;
      form.querySelectorAll('.met [data-dam]').forEach(met => { met.hidden = Boolean(dam) && met.dataset.dam !== dam; });
    }

    const renew = () => { tell(); fitRows(); showMet(); };
    form.addEventListener('input', renew);
    form.addEventListener('change', renew);
    form.addEventListener('drafts:filled', renew);
    form.addEventListener('drafts:rows', event => {
      const needed = event.detail.rows;
      if (rows && blank && needed > count('liveBorn')) field('liveBorn').value = needed;
      fitRows();
    });
    renew();
  }

  const find = () => begin(document.querySelector('form:has([data-tie])'));
  document.addEventListener('drafts:shown', find); // unsent.js put another form in its place
  find();
})();

// Litters that are not with the server yet: kept on the device while they are typed, one keeper's each, and sent once when there
// is reception. A draft's id is the key by which the server knows that it was sent before.
(() => {
  const keeper = document.querySelector('meta[name="keeper"]')?.content;
  const made = new Date(document.querySelector('meta[name="made"]')?.content ?? Date.now());
  const base = /^\/populations\/[^/]+/.exec(location.pathname)?.[0];
  const theLine = () => document.getElementById('unsent');
  const language = document.documentElement.lang;
  const locale = navigator.language.startsWith(language) ? navigator.language : language;
  const say = { ...theLine()?.dataset };
  const ready = new Promise(resolve => document.readyState === 'complete' ? resolve() : addEventListener('DOMContentLoaded', resolve));

  // ---- what is kept ----
  let database;
  function open() {
    database ??= new Promise((resolve, reject) => {
      const request = indexedDB.open('demebook', 1);
      request.onupgradeneeded = () => request.result.createObjectStore('drafts', { keyPath: 'id' });
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
    return database;
  }
  async function store(mode, work) {
    const drafts = (await open()).transaction('drafts', mode).objectStore('drafts');
    return new Promise((resolve, reject) => {
      const request = work(drafts);
      request.transaction.oncomplete = () => resolve(request.result);
      request.transaction.onabort = () => reject(request.transaction.error);
    });
  }
  const put = draft => store('readwrite', drafts => drafts.put(draft));
  const drop = id => store('readwrite', drafts => drafts.delete(id));
  async function mine() {
    const all = await store('readonly', drafts => drafts.getAll());
    return all.filter(draft => draft.keeper === keeper).sort((one, other) => one.changedAt - other.changedAt);
  }
  function freshId() {
    if (crypto.randomUUID) return crypto.randomUUID();
    return [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, '0')).join('');
  }

  // ---- sending ----
  async function send(draft) {
    let response;
    try {
      response = await fetch(`${draft.action}?once=${draft.id}&keeper=${draft.keeper}`, {
        method: 'POST', headers: { Accept: 'text/html' }, credentials: 'same-origin',
        body: new URLSearchParams(draft.fields), signal: AbortSignal.timeout(20000),
      });
    } catch {
      return { later: true };
    }
    const path = new URL(response.url).pathname;
    if (response.status === 401 || response.status === 403 || response.status === 499 || path === '/sign-in') return { signIn: true };
    if (response.status >= 500) return { later: true };
    if (response.ok && response.redirected) return { sent: path };
    try {
      const page = new DOMParser().parseFromString(await response.text(), 'text/html');
      return { refused: page.querySelector('main')?.innerHTML ?? '' };
    } catch {
      return { later: true };
    }
  }

  /** Sends one and keeps what came of it. */
  async function deliver(draft) {
    const outcome = await send(draft);
    if (outcome.sent) {
      await drop(draft.id);
    } else {
      const there = await store('readonly', drafts => drafts.get(draft.id));
      if (there?.state === 'waiting') {
        await put({ ...there, state: outcome.refused === undefined ? 'waiting' : 'refused', refused: outcome.refused, signIn: Boolean(outcome.signIn) });
      }
    }
    return outcome;
  }

  let sending = false;
  async function sendAll() {
    if (!keeper || sending || navigator.onLine === false) return show();
    sending = true;
    const work = async lock => {
      if (lock === null) return; // another tab is at it
      for (const draft of (await mine()).filter(one => one.state === 'waiting' && one.id !== current?.id)) {
        const outcome = await deliver(draft);
        if (outcome.sent) {
          const sent = document.getElementById('sent');
          if (sent) {
            sent.querySelector('a').href = outcome.sent;
            sent.hidden = false;
          }
        }
        if (outcome.later || outcome.signIn) break;
      }
    };
    try {
      await (navigator.locks ? navigator.locks.request('demebook-send', { ifAvailable: true }, work) : work());
    } finally {
      sending = false;
    }
    return show();
  }

  // ---- telling ----
  async function show() {
    const line = theLine();
    if (!line || !keeper) return;
    const drafts = (await mine()).filter(draft => draft.id !== current?.id);
    line.hidden = drafts.length === 0;
    const signIn = drafts.some(draft => draft.signIn);
    const words = [(drafts.length === 1 ? say.one : say.many).replace('#', drafts.length)];
    if (signIn) words.push(say.signIn);
    else if (drafts.some(draft => draft.state === 'refused')) words.push(say.refused);
    line.querySelector('[role="status"]').textContent = words.join(' ');
    line.querySelector('[data-to="sign-in"]').hidden = !signIn;
    if (drafts.length) line.querySelector('[data-to="list"]').href = drafts[0].action + '#unsent-list';
    list(drafts);
  }

  function list(drafts) {
    const section = document.getElementById('unsent-list');
    if (!section) return;
    section.hidden = drafts.length === 0;
    theLine().querySelector('[data-to="list"]').hidden = true;
    const items = drafts.map(draft => {
      const item = section.querySelector('template').content.firstElementChild.cloneNode(true);
      const part = name => item.querySelector('.' + name);
      part('when').textContent = new Date(draft.changedAt).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short' });
      part('what').textContent = `${draft.dam || say.noDam} · ${draft.live || 0}/${draft.found || '–'}`;
      part('why').textContent = draft.signIn ? say.signIn : say[draft.state];
      item.classList.toggle('late', draft.state === 'refused');
      const act = name => item.querySelector(`[data-do="${name}"]`);
      act('send').hidden = draft.state !== 'waiting';
      act('send').addEventListener('click', async () => { part('why').textContent = say.sending; await sendAll(); });
      act('open').href = `${draft.form}?draft=${draft.id}`;
      act('drop').addEventListener('click', async () => {
        if (confirm(say.sure)) {
          await drop(draft.id);
          await show();
        }
      });
      return item;
    });
    section.querySelector('ul').replaceChildren(...items);
  }

  // ---- the form that is being filled in ----
  let current;
  const form = () => document.getElementById('litter-entry');
  const action = () => new URL(form().action).pathname;
  const fields = () => [...new FormData(form())].filter(([, value]) => typeof value === 'string');

  function snapshot(state) {
    const entries = fields();
    const value = name => entries.find(([field]) => field === name)?.[1];
    const dam = value('dam') === 'other' ? value('otherDam') : value('dam');
    return {
      ...current, keeper, action: action(), form: action() + '/new', fields: entries, state,
      dam, live: value('liveBorn'), found: value('ovaFound'), changedAt: Date.now(), refused: undefined, signIn: false,
    };
  }

  function fill(entries) {
    const values = new Map();
    entries.forEach(([name, value]) => values.set(name, [...(values.get(name) ?? []), value]));
    const places = entries.map(([name]) => Number(/^young\[(\d+)]/.exec(name)?.[1] ?? -1) + 1);
    form().dispatchEvent(new CustomEvent('drafts:rows', { detail: { rows: Math.max(0, ...places, values.get('masses[]')?.length ?? 0) } }));
    for (const element of form().elements) {
      const wanted = values.get(element.name);
      if (!element.name || element.type === 'hidden') continue;
      if (element.type === 'radio' || element.type === 'checkbox') element.checked = wanted?.includes(element.value) ?? false;
      else if (wanted) element.value = element.name.endsWith('[]') ? (wanted.shift() ?? '') : wanted[0];
    }
    form().dispatchEvent(new Event('drafts:filled'));
  }

  let timer;
  function keepSoon() {
    clearTimeout(timer);
    timer = setTimeout(keepNow, 250);
  }
  function keepNow() {
    clearTimeout(timer);
    timer = undefined;
    if (!form() || !current) return undefined;
    current = snapshot('typing');
    return put(current).catch(() => { document.getElementById('no-keeping').hidden = false; });
  }

  function begin(draft) {
    current = draft ?? { id: freshId() };
    form().addEventListener('input', keepSoon);
    form().addEventListener('change', keepSoon);
    form().addEventListener('submit', submit);
    const anew = document.querySelector('#restored a');
    anew.addEventListener('click', async event => {
      event.preventDefault();
      if (confirm(say.sure)) {
        clearTimeout(timer);
        await drop(current.id);
        location.assign(action() + '/new');
      }
    });
  }

  async function submit(event) {
    event.preventDefault();
    clearTimeout(timer);
    const button = event.submitter ?? form().querySelector('button.primary');
    if (button.disabled) return;
    button.disabled = true;
    current = snapshot('waiting');
    try {
      await put(current);
    } catch {
      form().removeEventListener('submit', submit);
      form().action = `${action()}?once=${current.id}`;
      return form().submit(); // nothing can be kept here: as without script
    }
    const outcome = navigator.onLine === false ? { later: true } : await deliver(current);
    if (outcome.sent) return location.assign(outcome.sent);
    if (outcome.refused !== undefined) return showRefused({ ...current, refused: outcome.refused });
    await afterwards(outcome);
  }

  /** It is kept; the next litter can be entered. */
  async function afterwards(outcome) {
    const kept = document.createElement('p');
    kept.className = 'notice good';
    kept.tabIndex = -1;
    kept.setAttribute('role', 'status');
    kept.textContent = outcome.signIn ? say.signIn : say.later;
    const look = document.createElement('a');
    look.href = action() + '/new';
    look.textContent = say.enter;
    kept.append(' ', look);
    form().replaceWith(kept);
    document.getElementById('restored').hidden = true;
    current = undefined;
    await show();
    kept.scrollIntoView({ block: 'center' });
    kept.focus({ preventScroll: true });
  }

  /** The server's own page: what was typed, and what is wrong at its field. */
  function showRefused(draft) {
    const page = new DOMParser().parseFromString(draft.refused, 'text/html');
    document.querySelector('main').replaceChildren(...document.adoptNode(page.body).childNodes);
    const notice = document.querySelector('.problems');
    if (form()) {
      begin({ ...draft, refused: undefined });
      document.dispatchEvent(new Event('drafts:shown'));
    }
    (document.querySelector('main [aria-invalid="true"]') ?? notice)?.scrollIntoView({ block: 'center' });
    history.replaceState(null, '', `${draft.form}?draft=${draft.id}`);
    show();
  }

  async function openForm() {
    const asked = new URLSearchParams(location.search);
    const drafts = await mine();
    const wanted = drafts.find(draft => draft.id === asked.get('draft'));
    if (wanted?.state === 'refused' && wanted.refused) return showRefused(wanted);
    const dam = asked.get('dam');
    const typing = drafts.filter(draft => draft.state === 'typing' && draft.action === action() && (!dam || draft.dam === dam)).pop();
    const draft = wanted ?? (asked.has('draft') ? undefined : typing);
    await ready;
    if (draft) {
      fill(draft.fields);
      document.getElementById('restored').hidden = false;
    } else {
      renew(dam);
    }
    begin(draft);
  }

  // a kept copy knows neither today nor whom it was opened for
  function renew(dam) {
    const now = new Date();
    if (now - made > 600000) {
      form().elements.born.value = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map(part => String(part).padStart(2, '0')).join('-');
    }
    if (dam && !fields().some(([name, value]) => (name === 'dam' || name === 'otherDam') && value === dam)) {
      const choice = [...form().querySelectorAll('[name="dam"]')].find(one => one.value === dam);
      if (choice) choice.checked = true;
      else {
        const other = form().querySelector('[name="dam"][value="other"]');
        if (other) other.checked = true;
        if (form().elements.otherDam) form().elements.otherDam.value = dam;
      }
    }
    form().dispatchEvent(new Event('drafts:filled'));
  }

  // ---- pages that are kept ----
  function keepPages() {
    if (!('serviceWorker' in navigator)) return;
    navigator.serviceWorker.register('/sw.js').then(() => navigator.serviceWorker.ready).then(worker => {
      if (keeper && base) worker.active.postMessage({ keeper, keep: ['/litters/new', '/litters', '/litters/offline'].map(path => base + path) });
    }).catch(() => {});
  }
  function tellAge() {
    const age = Date.now() - made;
    const copy = document.getElementById('kept-copy');
    if (copy && (age > 600000 || navigator.onLine === false && age > 5000)) {
      copy.querySelector('time').textContent = made.toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short' });
      copy.hidden = false;
    }
  }
  async function forgetPages(event, go) {
    event.preventDefault();
    await self.caches?.delete('demebook-pages').catch(() => {});
    go();
  }
  document.addEventListener('submit', event => {
    if (new URL(event.target.action).pathname === '/sign-out' && self.caches) forgetPages(event, () => event.target.submit());
  });
  document.addEventListener('click', event => {
    const out = event.target.closest?.('a[href="/sign-out"]');
    if (out && self.caches) forgetPages(event, () => location.assign(out.href));
  });

  async function start() {
    tellAge();
    if (form()) await openForm();
    if (keeper) {
      await sendAll();
      if (location.hash === '#unsent-list') document.getElementById('unsent-list')?.scrollIntoView();
    }
    // when the page itself is there
    addEventListener('load', () => setTimeout(keepPages, 500));
    if (document.readyState === 'complete') setTimeout(keepPages, 500);
  }
  addEventListener('online', () => { document.getElementById('kept-copy')?.setAttribute('hidden', ''); sendAll(); });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') sendAll();
    else if (timer) keepNow();
  });
  start().catch(() => { document.getElementById('no-keeping')?.removeAttribute('hidden'); });
})();

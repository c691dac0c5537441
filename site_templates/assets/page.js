// Units, sheet colour, note folds and figure steps. Every page reads whole without this file.
// It stands in the head and blocks, so that units and sheet are set before the first paint.
(function () {
  'use strict';
  var root = document.documentElement, phone = matchMedia('(max-width: 65.99rem)');
  function recall(key) { try { return localStorage.getItem(key); } catch (e) { return null; } }
  function remember(key, value) { try { localStorage.setItem(key, value); } catch (e) { /* private window */ } }
  function all(selector, within) { return Array.from((within || document).querySelectorAll(selector)); }
  function make(tag, attributes, text) {
    var element = document.createElement(tag);
    Object.keys(attributes).forEach(function (name) { element.setAttribute(name, attributes[name]); });
    if (text) element.textContent = text;
    return element;
  }

  root.classList.add('js');
  root.dataset.units = recall('units') === 'us' ? 'us' : 'si';
  if (/^(light|dark)$/.test(recall('sheet'))) root.dataset.sheet = recall('sheet');

  function isDark() {
    if (root.dataset.sheet) return root.dataset.sheet === 'dark';
    return matchMedia('(prefers-color-scheme: dark)').matches;
  }

  function units() {
    all('input[name=units]').forEach(function (box) {
      box.checked = box.value === root.dataset.units;
      box.addEventListener('change', function () { root.dataset.units = box.value; remember('units', box.value); });
    });
  }

  function sheet() {
    all('[data-dark]').forEach(function (button) {
      function tell() { button.setAttribute('aria-pressed', isDark()); }
      tell();
      matchMedia('(prefers-color-scheme: dark)').addEventListener('change', tell);
      button.addEventListener('click', function () {
        root.dataset.sheet = isDark() ? 'light' : 'dark';
        remember('sheet', root.dataset.sheet);
        tell();
      });
    });
  }

  // On a phone a note is folded away and its ring opens it; on a wide screen the ring only points to it.
  function note(ring) {
    var text = document.getElementById(ring.hash.slice(1));
    if (!text || !text.classList.contains('side')) return;
    function fold(open) {
      text.classList.toggle('unfolded', open);
      if (phone.matches) ring.setAttribute('aria-expanded', open); else ring.removeAttribute('aria-expanded');
    }
    fold(location.hash === ring.hash);
    phone.addEventListener('change', function () { fold(text.classList.contains('unfolded')); });
    addEventListener('hashchange', function () { if (location.hash === ring.hash) fold(true); });
    ring.addEventListener('click', function (e) {
      if (!phone.matches) return;
      e.preventDefault();
      fold(!text.classList.contains('unfolded'));
    });
  }

  function build(figure) {
    var place = figure.querySelector('.build'), steps = all('.build li', figure), last = steps.length;
    if (!last) return;
    var layers = all('[data-layer], svg [data-name^="step-"]', figure), fading = all('[data-fades]', figure);
    var crops = all('.narrow svg', figure), views = crops.length / 2;
    var name = (figure.querySelector('figcaption .tag') || figure).textContent.trim().toLowerCase();
    var row = make('div', { 'class': 'row', role: 'group', 'aria-label': 'Build ' + name + ' up, step by step' });
    var back = make('button', { type: 'button', 'data-by': -1 }, 'Back');
    var next = make('button', { type: 'button', 'data-by': 1 }, 'Next');
    var numbers = steps.map(function (li, i) {
      return make('button', { type: 'button', 'data-to': i + 1, 'aria-label': 'Step ' + (i + 1) }, String(i + 1));
    });
    var said = make('p', { 'class': 'vh', role: 'status' }), count = make('span', { 'class': 'count', 'aria-hidden': 'true' });
    row.append(make('span', { 'class': 'tag' }, 'Build it up'), back);
    row.append.apply(row, numbers);
    row.append(count, next, make('span', { 'class': 'hint' }, 'or ← →'));
    all('.row, [role=status]', place).forEach(function (old) { old.remove(); });
    place.prepend(row);
    place.append(said);

    // On a phone a step on the way shows one view, the one with the most news, three letters of it, and their key.
    function crop() {
      var best = 0, most = -1, news = crops.map(function (view) {
        return all('.fresh :is([data-name^=label],[data-name^=dimension])', view).filter(function (one) { return one.textContent.length < 3; });
      });
      news.slice(0, views).forEach(function (labels, i) {
        var weight = labels.length || (crops[i].querySelector('.fresh path') ? .5 : 0);
        if (weight > most) { best = i; most = weight; }
      });
      var shown = [];
      crops.forEach(function (view, i) {
        view.classList.toggle('aside', i % views !== best);
        // what acts comes before the names of parts
        news[i].sort(function (a, b) { return acts(b) - acts(a); }).forEach(function (label, n) {
          label.classList.toggle('elsewhere', n > 2);
          if (n < 3 && i % views === best) shown.push(label.textContent);
        });
      });
      all('.key li', figure).forEach(function (li) {
        li.classList.toggle('elsewhere', shown.indexOf(li.firstElementChild.textContent) < 0);
      });
    }
    function acts(label) { return /^label-(force|reaction|moment)/.test(label.dataset.name); }

    function show(n, aloud) {
      n = Math.max(1, Math.min(last, n));
      figure.dataset.step = n;
      // The finished figure shows its whole key; a step on the way only what is new in it.
      figure.classList.toggle('underway', n < last);
      layers.forEach(function (layer) {
        var step = +(layer.dataset.layer || layer.dataset.name.slice(5));
        layer.classList.toggle('later', step > n);
        layer.classList.toggle('fresh', step === n);
      });
      crop();
      fading.forEach(function (layer) { layer.classList.toggle('faded', n >= +layer.dataset.fades); });
      steps.forEach(function (li, i) { li.classList.toggle('now', i === n - 1); });
      numbers.forEach(function (b, i) { if (i === n - 1) b.setAttribute('aria-current', 'step'); else b.removeAttribute('aria-current'); });
      back.setAttribute('aria-disabled', n === 1);
      next.setAttribute('aria-disabled', n === last);
      count.textContent = n + ' of ' + last;
      if (aloud) said.textContent = 'Step ' + n + ' of ' + last + '. ' + steps[n - 1].innerText;
    }
    row.addEventListener('click', function (e) {
      var b = e.target.closest('button');
      if (b) show(b.dataset.to ? +b.dataset.to : +figure.dataset.step + +b.dataset.by, true);
    });
    row.addEventListener('keydown', function (e) {
      var n = { ArrowRight: +figure.dataset.step + 1, ArrowLeft: +figure.dataset.step - 1, Home: 1, End: last }[e.key];
      if (n === undefined || e.altKey || e.ctrlKey || e.metaKey) return;
      e.preventDefault();
      show(n, true);
      var button = numbers[+figure.dataset.step - 1];
      if (button.offsetParent) button.focus();
    });
    show(last, false);
    addEventListener('beforeprint', function () { figure.dataset.printed = figure.dataset.step; show(last, false); });
    addEventListener('afterprint', function () { show(+figure.dataset.printed, false); });
  }

  // A box that scrolls sideways must be reachable with the keyboard, and only then.
  function scrollable() {
    all('.tablewrap:not([role=region]), .plate > .wide, .eq, .run math, pre').forEach(function (box) {
      var needed = box.scrollWidth > box.clientWidth + 1;
      Object.entries({ tabindex: '0', role: 'group', 'aria-label': 'Scrolls sideways' }).forEach(function (one) {
        if (needed) box.setAttribute(one[0], one[1]); else box.removeAttribute(one[0]);
      });
    });
  }

  document.addEventListener('DOMContentLoaded', function () {
    var opened = [];
    units(); sheet();
    all('a.ring').forEach(note);
    all('figure[data-build]').forEach(build);
    all('details').forEach(function (fold) { fold.addEventListener('toggle', scrollable); });
    all('input[name=units]').forEach(function (box) { box.addEventListener('change', scrollable); });
    scrollable();
    addEventListener('resize', scrollable);
    addEventListener('load', scrollable);
    addEventListener('beforeprint', function () {
      opened = all('.worked:not([open]), [data-open-on-paper]:not([open])');
      opened.forEach(function (fold) { fold.open = true; });
    });
    addEventListener('afterprint', function () { opened.forEach(function (fold) { fold.open = false; }); });
  });
}());

// Finding a word in the course: lunr over the index that MkDocs wrote, also when the site is opened from a folder.
(function () {
  'use strict';
  var form = document.getElementById('find'), box = form.q, list = document.getElementById('found');
  var said = document.getElementById('found-count'), base = form.dataset.base.replace(/\.?$/, ''), index, texts = {};

  function ready(data) {
    data.docs.forEach(function (one) { texts[one.location] = one; });
    index = lunr(function () {
      this.ref('location');
      this.field('title', { boost: 10 });
      this.field('text');
      data.docs.forEach(function (one) { this.add(one); }, this);
    });
    show();
  }

  function page(hit) { return hit.ref.split('#')[0]; }
  // of a number in both unit systems only the reader's is shown
  function plain(html) {
    var us = document.documentElement.dataset.units === 'us';
    return new DOMParser().parseFromString(html, 'text/html').body.textContent
      .replace(/\ue002([^\ue003]*)\ue003([^\ue004]*)\ue004/g, function (all, si, other) { return us ? other : si; });
  }

  // The words around the first hit, with the hit marked.
  function excerpt(text, word) {
    var at = text.toLowerCase().indexOf(word), from = Math.max(0, text.lastIndexOf(' ', Math.max(0, at - 60)) + 1), p = document.createElement('p');
    if (at < 0) { p.textContent = text.slice(0, 160); return p; }
    p.append((from ? '… ' : '') + text.slice(from, at));
    p.append(Object.assign(document.createElement('mark'), { textContent: text.slice(at, at + word.length) }));
    p.append(text.slice(at + word.length, at + 110) + (text.length > at + 110 ? ' …' : ''));
    return p;
  }

  function show() {
    var words = box.value.toLowerCase().match(/[\p{L}\p{N}]+/gu) || [];
    list.replaceChildren();
    if (!words.length || !index) { said.textContent = ''; return; }
    // every word must occur, the last one may be unfinished
    var hits = index.query(function (q) {
      words.forEach(function (word) {
        lunr.tokenizer(word).forEach(function (token) {
          q.term(token.toString(), { boost: 10 });
          q.term(token.toString(), { wildcard: lunr.Query.wildcard.TRAILING, boost: 1, usePipeline: false });
        });
      });
    }).filter(function (hit) {
      var one = texts[hit.ref], all = (one.title + ' ' + one.text).toLowerCase();
      return words.every(function (word) { return all.indexOf(word.replace(/(ies|es|s)$/, '')) >= 0; });
    });
    // a page whose section is found need not be named as well
    var pages = hits.filter(function (hit) { return hit.ref.indexOf('#') > 0; }).map(page);
    hits = hits.filter(function (hit) { return hit.ref.indexOf('#') > 0 || pages.indexOf(hit.ref) < 0; });
    said.textContent = hits.length ? hits.length + (hits.length === 1 ? ' place' : ' places') : 'Nothing on this. Try a single word.';
    hits.slice(0, 30).forEach(function (hit) {
      var one = texts[hit.ref], whole = texts[page(hit)], li = document.createElement('li');
      li.append(Object.assign(document.createElement('a'), { href: base + one.location, textContent: plain(one.title) }));
      if (whole && whole !== one) li.append(Object.assign(document.createElement('span'), { className: 'tag', textContent: plain(whole.title) }));
      li.append(excerpt(plain(one.text), words[0]));
      list.append(li);
    });
  }

  function failed() { said.textContent = 'The list of words could not be read. A site without the hubwright plugin needs a web server for this page.'; }

  box.value = new URLSearchParams(location.search).get('q') || '';
  box.addEventListener('input', show);
  document.addEventListener('change', show);  // after the page's own script has turned the units
  form.addEventListener('submit', function (e) { e.preventDefault(); show(); });
  box.focus();
  if (window.searchIndex) ready(window.searchIndex);
  else fetch(form.dataset.index).then(function (answer) { return answer.json(); }).then(ready).catch(failed);
}());

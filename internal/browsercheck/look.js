// What the checks ask of a page. It runs ahead of the page, and again after a reload.
window.look = {
	rest: ms => new Promise(r => setTimeout(r, ms)),

	width: () => Math.max(document.scrollingElement.scrollWidth, innerWidth),

	// wider names what reaches over the width and does not scroll by itself.
	wider(width) {
		const scrolls = e => e && (getComputedStyle(e).overflowX !== 'visible' || scrolls(e.parentElement));
		return [...document.body.querySelectorAll('*')]
			.filter(e => e.getBoundingClientRect().right > width + 0.5 && !scrolls(e.parentElement))
			.slice(0, 3).map(look.name);
	},

	name: e => e.localName + (e.id && '#' + e.id) + (e.className && '.' + e.className),

	shown: e => e.checkVisibility({visibilityProperty: true, opacityProperty: true}),

	moving: () => [...document.querySelectorAll('*')].filter(e => {
		const style = getComputedStyle(e);
		const lasts = list => list.split(',').some(t => parseFloat(t) > 0.01);
		return style.scrollBehavior === 'smooth' || lasts(style.transitionDuration) ||
			style.animationName !== 'none' && lasts(style.animationDuration);
	}).map(look.name),

	policy: () => document.querySelector('meta[http-equiv="Content-Security-Policy"]')?.content ?? '',

	hasHand: () => document.getElementById('hand') !== null,

	steps: () => [...document.querySelectorAll('li.step')],

	links: () => [...document.querySelectorAll('a.go[href^="#step-"]')].map(a => Number(a.hash.replace('#step-', ''))),

	text: e => e ? e.innerText.replace(/\s+/g, ' ').trim() : '',

	ticks: () => look.steps().map((_, i) => i + 1).filter(n => document.getElementById('tick-' + n).checked),

	buttons: () => [...document.querySelectorAll('button')].filter(look.shown).map(look.name),

	current: () => [...document.querySelectorAll('[aria-current=step]')].map(e => Number(e.id.replace('step-', ''))),

	// state tells how the work stands on the sheet.
	state() {
		const hand = look.current();
		const panel = document.getElementById('hand');
		const aside = [...panel.querySelectorAll('button, [role=status]')].map(look.text);
		return {
			hand,
			ticks: look.ticks(),
			panel: aside.reduce((text, a) => text.replace(a, ''), look.text(panel)),
			counter: look.text(document.getElementById('hand-counter')),
			said: look.text(document.getElementById('hand-said')),
			entry: document.querySelector(`#step-${hand[0]} .at b`)?.textContent ?? '',
			focus: document.activeElement.id,
			steps: look.steps().length,
			width: look.width(),
		};
	},

	// next waits for another step in hand and for what is said of it, and tells the state.
	async next(before) {
		const same = s => String(s.hand) === String(before.hand) || s.said === before.said || s.said === '';
		await look.patience(() => !same(look.state()));
		return look.state();
	},

	// settled waits for a state and whether it lasts, and tells the one that there is then.
	async settled(hand, ticks, patient) {
		if (patient) await look.patience(() => String(look.current()) === String(hand) && String(look.ticks()) === String(ticks || []));
		await look.rest(40);
		return look.state();
	},

	// patience waits until something is so, for a while.
	async patience(so) {
		for (let i = 0; i < 200 && !so(); i++) await look.rest(5);
	},

	// at brings the element to the middle of the window and tells the point of it that is
	// touched.
	at(selector) {
		const e = document.querySelector(selector);
		if (!e) return {problem: 'is not there'};
		e.scrollIntoView({block: 'center', inline: 'center', behavior: 'instant'});
		const box = e.getBoundingClientRect();
		const x = box.left + box.width / 2, y = box.top + box.height / 2;
		const top = document.elementFromPoint(x, y);
		if (!top) return {problem: 'is not in the window'};
		const own = e.contains(top) || [...(e.labels || [])].some(l => l.contains(top));
		return own ? {x, y} : {problem: 'lies under ' + look.name(top)};
	},

	// unseenFocus names what has the focus and looks as it does without.
	unseenFocus() {
		const e = document.activeElement;
		const seen = () => {
			const s = getComputedStyle(e);
			return s.outlineStyle !== 'none' || s.boxShadow !== 'none';
		};
		return e === document.body || seen() ? '' : look.name(e);
	},

	// small names what is touched and is smaller than a thumb.
	small(least) {
		const joined = (a, b) => ({
			left: Math.min(a.left, b.left), right: Math.max(a.right, b.right),
			top: Math.min(a.top, b.top), bottom: Math.max(a.bottom, b.bottom),
		});
		return [...document.querySelectorAll('a[href], button, input, select, textarea, summary')].filter(look.shown).flatMap(e => {
			const box = [...(e.labels || [])].map(l => l.getBoundingClientRect()).reduce(joined, e.getBoundingClientRect());
			const width = Math.round(box.right - box.left), height = Math.round(box.bottom - box.top);
			return width < least || height < least ? [`${look.name(e)} ${width} x ${height}`] : [];
		});
	},

	// covered tells what part of the window the panel takes of the list, whose column it
	// may stand in.
	covered() {
		const panel = document.getElementById('hand').getBoundingClientRect();
		const list = look.steps()[0].getBoundingClientRect();
		return panel.left < list.right && panel.right > list.left ? panel : {top: 0, bottom: 0, height: 0};
	},

	// room tells from where to where the window shows the list beside the panel.
	room() {
		const panel = look.covered();
		const low = panel.top > innerHeight - panel.bottom;
		return low ? [0, Math.min(innerHeight, panel.top)] : [Math.max(0, panel.bottom), innerHeight];
	},

	// reveal scrolls a step to the top of the room.
	reveal(n) {
		scrollBy({top: document.getElementById('step-' + n).getBoundingClientRect().top - look.room()[0], behavior: 'instant'});
	},

	// hidden tells how many pixels of a step are out of the room though they would fit.
	hidden(n) {
		const box = document.getElementById('step-' + n).getBoundingClientRect(), [top, bottom] = look.room();
		const seen = Math.max(0, Math.min(box.bottom, bottom) - Math.max(box.top, top));
		return Math.round(Math.min(box.height, bottom - top) - seen);
	},

	// share tells how much of the list's height in the window is always the panel's.
	share() {
		const stays = ['sticky', 'fixed'].includes(getComputedStyle(document.getElementById('hand')).position);
		return stays ? look.covered().height / innerHeight : 0;
	},

	// out goes through all steps and names the buttons that are then not wholly in the window.
	out() {
		const buttons = [...document.querySelectorAll('#hand button')];
		return look.steps().flatMap((_, i) => {
			const cut = buttons.filter(e => {
				const box = e.getBoundingClientRect();
				return box.top < 0 || box.bottom > innerHeight + 0.5 || box.left < 0 || box.right > innerWidth + 0.5;
			});
			document.getElementById('hand-on').click();
			return cut.map(e => `${look.name(e)} at step ${i + 1}`);
		});
	},

	// box tells where the box of a step is.
	box(n) {
		const tick = document.getElementById('tick-' + n);
		tick.scrollIntoView({block: 'center', behavior: 'instant'});
		const {x, y, width, height} = tick.getBoundingClientRect();
		return {x: x + scrollX, y: y + scrollY, width, height, scale: 1};
	},

	// style adds rules to those of the page, whatever its policy.
	style(rules) {
		const sheet = new CSSStyleSheet();
		sheet.replaceSync(rules);
		document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
	},

	// cutText tells the words in drawings that reach over the drawing's edge.
	cutText: () => [...document.querySelectorAll('svg text')].filter(e => {
		const word = e.getBoundingClientRect(), all = e.ownerSVGElement.getBoundingClientRect();
		return word.left < all.left - 1 || word.right > all.right + 1 || word.top < all.top - 1 || word.bottom > all.bottom + 1;
	}).map(e => e.textContent.trim()),

	// paint gives the text of each step and of the panel a colour of its own, and makes all
	// other text black. A colour moves nothing.
	paint(steps, panel) {
		const parts = ['', '::before', '::after', '::marker'];
		const rule = (selector, colour) => parts.map(part => `${selector}${part}, ${selector} *${part}`).join(', ') +
			` { color: ${colour} !important; fill: ${colour} !important; print-color-adjust: exact !important }`;
		look.style([rule('body', 'black'), ...steps.map((c, i) => rule('li#step-' + (i + 1), c)), rule('#hand', panel)].join('\n'));
	},
};

/**
 * The fixed part of the loading sheet, in Typst 0.14. Reads everything from the dictionary `sheet` above it.
 * Faces: only the two families in `fonts/`, with no fallback, so every machine draws the same page.
 */
export const LOADING_SHEET_TEMPLATE = `
#let mono(size: 10pt, weight: "regular", body) = text(font: "Source Code Pro", size: size, weight: weight, body)
#let small(body) = text(size: 8.5pt, body)
#let hairline = 0.4pt + luma(45%)
#let rule = 0.9pt + black
#let tick-box = box(width: 5.4mm, height: 5.4mm, stroke: 0.9pt + black)
#let writing-line(width) = box(width: width, height: 5.4mm, stroke: (bottom: hairline))
#let head(body) = text(size: 8.5pt, weight: "bold", body)
// on one page where it fits one; what is higher than a page breaks rather than run off it
#let kept(body) = layout(size => block(
  breakable: measure(body, width: size.width).height > 0.9 * size.height,
  width: 100%,
  body,
))

#set document(title: sheet.title)
#set page(
  paper: sheet.paper,
  margin: (x: 12mm, top: 19mm, bottom: 16mm),
  header-ascent: 3.5mm,
  footer-descent: 3.5mm,
  header: {
    set text(size: 9.5pt)
    grid(
      columns: (1fr, auto),
      stroke: (bottom: rule),
      inset: (bottom: 1.6mm),
      [*#sheet.running-vessel* #h(3mm) #sheet.running-call-sign],
      [*#sheet.date*],
    )
  },
  footer: {
    set text(size: 9.5pt)
    grid(
      columns: (1fr, auto),
      stroke: (top: rule),
      inset: (top: 1.6mm),
      [Loading sheet, #sheet.running-kind #h(3mm) #sheet.running-set],
      context [*Page #counter(page).display() of #counter(page).final().first()*],
    )
  },
)
#set text(font: "Source Sans 3", size: 10pt, lang: "en", fallback: false, hyphenate: false)
#set par(leading: 0.52em, spacing: 0.8em)
#set table(stroke: none, inset: (x: 1.4mm, y: 1.5mm))
#set heading(bookmarked: true)
#show heading: it => block(above: 6mm, below: 2.6mm, sticky: true, text(size: 13pt, weight: "bold", it.body))

// ---- title block
#block(above: 0pt, below: 3mm)[
  #text(size: 22pt, weight: "bold")[Loading sheet]
  #v(-2mm)
  #text(size: 12pt, sheet.kind)
]
#table(
  columns: (auto, 1.25fr, auto, 1fr),
  inset: (x: 1.4mm, y: 1.8mm),
  stroke: (x: none, y: hairline),
  head[Vessel], text(size: 13pt, weight: "bold", sheet.vessel),
  head[Call sign], if sheet.call-sign == none [not given] else { mono(size: 12pt, sheet.call-sign) },
  head[Set], sheet.set,
  head[MMSI], if sheet.mmsi == none [not given] else { mono(size: 12pt, sheet.mmsi) },
  head[Job], sheet.job,
  head[Date of sheet], mono(size: 12pt, sheet.date),
  head[To key], [#sheet.steps steps],
  head[Time], [#sheet.minutes, read-back included],
  [], table.cell(colspan: 3, small(sheet.minutes-rest-on)),
)

// ---- what must be settled first
#let stops = sheet.finding-groups.filter(g => g.severity == "stop").map(g => g.findings.map(f => (..f, remedy: g.remedy))).flatten()
#if stops.len() > 0 {
  block(above: 4mm, below: 4mm, width: 100%, stroke: 2.4pt + black, inset: 3mm)[
    #text(size: 14pt, weight: "bold")[STOP: settle #if stops.len() == 1 [this] else [these #stops.len()] before keying]
    #for f in stops.slice(0, calc.min(stops.len(), 5)) [
      #block(above: 2mm, below: 0pt)[*#f.number. #f.where:* #f.message #f.remedy]
    ]
    #if stops.len() > 5 { block(above: 2mm)[and #(stops.len() - 5) more: see the findings that still stand.] }
  ]
}

// ---- how to use it
#heading(level: 1)[How to use this sheet]
#for (i, sentence) in sheet.how-to.enumerate() {
  block(above: 1.6mm, below: 1.6mm, grid(columns: (5mm, 1fr), [*#(i + 1)*], sentence))
}
#block(above: 3mm, grid(
  columns: (auto, 1fr),
  column-gutter: 3mm,
  row-gutter: 1.8mm,
  ..for s in sheet.signs { (mono(size: 9pt, s.sign), text(size: 9pt, s.means)) },
))

// ---- cautions
#block(above: 5mm, below: 4mm, width: 100%, stroke: 1.8pt + black, inset: 3.2mm, breakable: false)[
  #text(size: 13pt, weight: "bold")[Cautions]
  #v(-1mm)
  #let caution-column(groups) = stack(
    spacing: 3.2mm,
    ..groups.map(group => stack(
      spacing: 1.5mm,
      text(weight: "bold", group.heading),
      ..group.lines.map(line => grid(columns: (3.2mm, 1fr), [•], text(size: 9.5pt, line))),
    )),
  )
  #grid(
    columns: (1fr, 1fr),
    column-gutter: 6mm,
    caution-column(sheet.cautions.slice(0, 2)),
    caution-column(sheet.cautions.slice(2)),
  )
]

// ---- settings
#if sheet.settings.len() > 0 {
  heading(level: 1)[Settings beside the places]
  let setting-value(value, weight: "regular") = if value.match(regex("[a-z]")) == none {
    mono(size: 9.5pt, weight: weight, value)
  } else { text(weight: weight, value) }
  kept(table(
    columns: (0.95fr, 0.85fr, 1.15fr, 9mm, 0.75fr, 1.7fr),
    stroke: (x: none, y: hairline),
    align: (x, y) => if x == 3 { center + horizon } else { left + horizon },
    table.header(
      table.hline(stroke: rule),
      head[setting], head[as found], head[wanted], head[done], head[read back], head[who and how],
      table.hline(stroke: rule),
    ),
    ..for s in sheet.settings {
      (
        text(weight: "bold", s.name),
        setting-value(s.as-found),
        setting-value(s.wanted, weight: "bold"),
        tick-box,
        v(8mm),
        small(s.note),
      )
    },
  ))
}
#if sheet.sends {
  let digits = grid(
    columns: (6.6mm,) * 3 + (2mm,) + (6.6mm,) * 3 + (2mm,) + (6.6mm,) * 3,
    rows: 8mm,
    ..for i in range(11) { (if i == 3 or i == 7 { [] } else { rect(width: 100%, height: 100%, stroke: 0.8pt + black) },) },
  )
  v(1mm)
  kept(block(width: 100%, stroke: 1.8pt + black, inset: 3.2mm)[
    #text(size: 12pt, weight: "bold")[MMSI: two persons, digit by digit, before it is stored and again from the display]
    #v(0.5mm)
    #grid(
      columns: (auto, auto, 1fr),
      column-gutter: 4mm,
      row-gutter: 3mm,
      align: horizon,
      [in the job],
      grid.cell(
        colspan: 2,
        if sheet.mmsi == none [*not given: take it from the ship licence*] else { mono(size: 15pt, weight: "bold", sheet.mmsi) },
      ),
      [first person reads], digits, [name #writing-line(1fr)],
      [second person reads], digits, [name #writing-line(1fr)],
    )
  ])
}

// ---- keying steps
#heading(level: 1)[Keying steps]
#if sheet.nothing-to-key != none { block(text(size: 12pt, weight: "bold", sheet.nothing-to-key)) }
#let dial(figure, moves) = {
  mono(size: 13.5pt, weight: "bold", figure)
  for m in moves { block(above: 1.8mm, below: 0pt, mono(size: 9pt, m)) }
}
#let mark(see) = {
  let worst = see.first().severity
  let numbers = see.map(s => str(s.number)).join(", ")
  box(
    stroke: if worst == "mind" { none } else { 0.9pt + black },
    inset: if worst == "mind" { 0pt } else { (x: 1mm) },
    outset: if worst == "mind" { 0pt } else { (y: 0.9mm) },
    text(size: 9pt, weight: "bold")[#if worst == "stop" [STOP, ]see #numbers],
  )
  h(1.6mm)
}
// rows that share one tall cell of no width stay on one page: the first two and the last two of a block
#let kept-together(n) = {
  if n <= 3 { (n,) } else { (2,) + (1,) * (n - 4) + (2,) }
}
#let dial-width = 41mm
// a receiver's sheet has one dial
#let dials = if sheet.sends { 2 } else { 1 }
#let mode-width = 12mm
#let step-row(s) = {
  let cell = table.cell.with(breakable: s.long)
  let transmit = if s.transmit == none { text(size: 11pt, weight: "bold")[receive only] } else {
    dial(s.transmit, s.transmit-moves)
  }
  let figures = if s.clear {
    (grid.cell(colspan: dials + 1, text(size: 12pt, weight: "bold")[CLEAR this place]),)
  } else {
    (
      dial(if s.receive == none { "—" } else { s.receive }, s.receive-moves),
      ..if sheet.sends { (transmit,) },
      mono(size: 12.5pt, weight: "bold", s.mode),
    )
  }
  // a short remark moves to the next line whole
  let whole(body, length) = if length < 60 { box(body) } else { body }
  let remarks = (
    if s.what != "" { whole(s.what, s.what.len()) },
    if s.source != "" { whole(s.source, s.source.len()) },
    if s.before != "" { whole([*was* #s.before], s.before.len()) },
  ).filter(r => r != none)
  (
    cell(align: center, inset: (x: 0pt), tick-box),
    cell(align: right, move(dy: 1.1mm, small[#s.order])),
    cell(mono(size: 13.5pt, weight: "bold")[#s.place]),
    cell(colspan: dials + 2, inset: (x: 0pt), {
      grid(
        columns: (1fr, ..(dial-width,) * dials, mode-width),
        inset: (x: 1.2mm),
        if s.tag == "" { text(size: 11pt, if s.clear [] else [no tag]) } else { pad(right: 2.8mm, mono(size: 12.5pt, weight: "bold", s.tag)) },
        ..figures,
      )
      block(above: 2mm, below: 0pt, inset: (x: 1.2mm), {
        if s.see.len() > 0 { mark(s.see) }
        text(size: 9.2pt, remarks.join(h(4mm, weak: true)))
      })
    }),
    cell(inset: (left: 1.2mm, right: 0pt), [#tick-box #h(1mm) #writing-line(1fr)]),
  )
}
#if sheet.blocks.len() > 0 {
  table(
    columns: (0pt, 11mm, 8.5mm, 13mm, 1fr, ..(dial-width,) * dials, mode-width, 24mm),
    inset: (x, y) => if x == 0 { 0pt } else { (x: 1.2mm, top: 1.8mm, bottom: 2.2mm) },
    stroke: (x, y) => if x == 0 { none } else { (bottom: hairline) },
    align: left + top,
    table.header(
      level: 1,
      table.hline(stroke: rule),
      [], head[keyed], head[step], head[place], head[tag; what it is], head[receive dial], ..if sheet.sends { (head[transmit dial],) }, head[mode], head[read back],
      table.hline(stroke: rule),
    ),
    ..for b in sheet.blocks {
      (
        table.header(
          level: 2,
          [],
          table.cell(
            colspan: dials + 6,
            inset: (x: 1.2mm, top: 3.4mm, bottom: 1.6mm),
            stroke: (bottom: rule),
            [#text(size: 12pt, weight: "bold")[Bank #b.bank, #b.name] #h(1fr) #small(b.count)],
          ),
        ),
      )
      let spans = kept-together(b.steps.len())
      let starts = (0,)
      for n in spans { starts.push(starts.last() + n) }
      for (i, s) in b.steps.enumerate() {
        let k = starts.position(start => start == i)
        if k != none { (table.cell(rowspan: spans.at(k), breakable: b.steps.slice(i, i + spans.at(k)).any(t => t.long), []),) }
        step-row(s)
      }
    },
  )
}

// ---- findings
#if sheet.finding-groups.len() > 0 or sheet.old-figures != none {
  heading(level: 1)[Findings that still stand#if sheet.finding-count != none [: #sheet.finding-count]#if sheet.old-figures != none [; old figures below]]
}
#if sheet.finding-groups.len() > 0 {
  block(sticky: true, small[*STOP*: do not key it. *fix*: put it right on this visit. *mind*: know of it. What to do stands at the head of each group, with the clause or practice behind it.])
  let size-of(severity) = if severity == "mind" { 9pt } else { 10.5pt }
  table(
    columns: (9mm, 26mm, 1fr),
    stroke: (x: none, y: hairline),
    inset: (x: 1.2mm, y: 1.2mm),
    table.header(
      level: 1,
      table.hline(stroke: rule),
      head[no.], head[where], head[what is wrong],
      table.hline(stroke: rule),
    ),
    ..for g in sheet.finding-groups {
      (
        table.header(
          level: 2,
          table.cell(colspan: 3, inset: (x: 1.2mm, top: 2.6mm, bottom: 1.4mm))[
            #text(size: 10.5pt, weight: "bold")[#if g.severity == "stop" [STOP] else [#g.severity]: #g.remedy]
            #h(2mm, weak: true)
            #small(g.code + "; " + g.source)
          ],
        ),
      )
      for f in g.findings {
        (
          text(size: 9pt)[#f.number],
          mono(size: 9pt, f.where),
          text(size: size-of(g.severity), f.message),
        )
      }
    },
  )
}
#if sheet.old-figures != none { block(above: 3mm, below: 7mm)[*Old figures, to mind.* #sheet.old-figures] }

// ---- tune-up
#kept({
  heading(level: 1)[Tuning up, band by band]
  if not sheet.sends {
    [This set has no transmitter: there is nothing to tune up.]
  } else if sheet.tune-up.len() == 0 {
    [No lawful tune-up place is known for this set: do not tune up on the air.]
  } else {
    block(width: 100%, stroke: 1.8pt + black, inset: 2.6mm)[*Tuning up radiates.* Licences in hand, nobody near tuner or antenna, listen until you are sure that the carrier is free, low power, a few seconds. Never on a distress, safety or calling frequency.]
    table(
      columns: (16mm, 26mm, 1fr, 14mm, 14mm, 14mm, 30mm),
      stroke: (x: none, y: hairline),
      align: (x, y) => if x >= 3 and x <= 5 { center + horizon } else { left + horizon },
      table.header(
        table.hline(stroke: rule),
        head[band], head[carrier, kHz], head[what it is], head[free], head[low power], head[tuned], head[reading],
        table.hline(stroke: rule),
      ),
      ..if sheet.tune-up-below != none { ([*2 MHz*], table.cell(colspan: 6)[below 4 MHz: #sheet.tune-up-below]) },
      ..for t in sheet.tune-up {
        ([*#t.band*], mono(size: 12.5pt, weight: "bold", t.carrier), small(t.note), tick-box, tick-box, tick-box, writing-line(26mm))
      },
    )
  }
})

// ---- signatures: before the last table, so that they never stand on a page of their own
#block(breakable: false, above: 7mm)[
  #text(size: 13pt, weight: "bold")[Done]
  #v(-1mm)
  #table(
    columns: (42mm, 1fr, 1fr, 34mm),
    rows: (auto, 13mm, 13mm),
    stroke: (x: none, y: hairline),
    align: left + bottom,
    [], head[name], head[signature], head[date and UTC],
    [keyed by (fitter)], [], [], [],
    [read back by], [], [], [],
  )
  #v(1mm)
  #small[Remarks]
  #for i in range(4) { block(above: 8.5mm, below: 0pt, line(length: 100%, stroke: hairline)) }
]

// ---- sources
#heading(level: 1)[Where the figures come from]
#block(sticky: true)[Directory edition *#sheet.directory*. A figure in a list is no proof that the station still sends: it is proved when it has been heard.]
#if sheet.sources.len() > 0 {
  table(
    columns: (1fr, 20mm, 66mm, 22mm),
    stroke: (x: none, y: hairline),
    inset: (x: 1.2mm, y: 1.2mm),
    table.header(
      level: 1,
      table.hline(stroke: rule),
      head[source], head[as of], head[age], head[steps],
      table.hline(stroke: rule),
    ),
    ..for g in sheet.sources {
      (
        table.header(
          level: 2,
          table.cell(colspan: 4, inset: (x: 1.2mm, top: 2.6mm, bottom: 1.4mm), text(size: 10.5pt, weight: "bold", g.confidence)),
        ),
      )
      for s in g.sources {
        (small(s.source), small(s.as-of), small[*#s.grade.* #s.why], small(s.steps))
      }
    },
  )
}
`;

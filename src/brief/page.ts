import type { System } from '../units.ts';
import type { Briefing } from './brief.ts';
import { driverCard } from './card.ts';
import { drawing, html } from './html.ts';
import { leaderSheet } from './leader.ts';
import { PAGE_STYLE } from './pageStyle.ts';
import { say, spoken } from '../words/words.ts';

/** The briefing as one page of HTML that needs nothing else: the leader's sheet, then a card a driver. */
export function briefingPage(briefing: Briefing, system: System): string {
  const title = briefing.outing.name || say.sheet.unnamedTrip;
  return `<!doctype html>\n${
    html`<html lang="${spoken}">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width" />
        <title>${say.sheet.title(title)}</title>
        ${drawing(`<style>${PAGE_STYLE}</style>`)}
      </head>
      <body>
        ${leaderSheet(briefing, system)}
        <section class="cards">
          ${briefing.cards.map((card, i) => driverCard(card, i + 1, briefing, system))}
        </section>
      </body>
    </html> `.markup
  }`;
}

// The front door: everything that host, worker and command line use of the engine.
export type { Book, BookRow, Kind, Kit, KitQuestion } from './book/book.ts';
export { kindGroups } from './book/book.ts';
export { cautionsFirst } from './book/cautions.ts';
export { kindsPage } from './book/kinds-page.ts';
export { readBook } from './book/read-book.ts';
export { kitProblems, kitStart } from './book/kit-answers.ts';
export { kitRows } from './book/kit-rows.ts';
export type { Check, CheckOutcome } from './estimate/checks/check.ts';
export type { Amount, Bill, BillLine, GroupTotal, RowNeed, Step } from './estimate/bill.ts';
export { bandWords, priceBand } from './estimate/band/price-band.ts';
export { actualLines, actualsOf } from './estimate/actuals/actuals.ts';
export { actualRows, type ActualRow } from './estimate/actuals/actual-rows.ts';
export {
  evidenceWords,
  proposeRates,
  rateEdits,
  type RateProposal,
} from './estimate/actuals/propose-rates.ts';
export {
  compareOptions,
  compareOptionSteps,
  optionLines,
  optionPrices,
  unweighedWords,
  type ComparedOptions,
} from './estimate/options/compare-options.ts';
export { acceptOption, optionsOf } from './estimate/options/options.ts';
export { amountText, lengthText, packText } from './estimate/amount.ts';
export { jobCautions, type JobCaution } from './estimate/job-cautions.ts';
export { boughtNotes } from './estimate/held-price.ts';
export { mixFacts } from './estimate/mix/mix-facts.ts';
export { mixPlan } from './estimate/mix/mix-plan.ts';
export {
  coatWords,
  mixCaution,
  mixTotalText,
  shopTemperature,
  type CoatWords,
} from './estimate/mix/mix-words.ts';
export type { Coat } from './estimate/mix/mix.ts';
export { moneyChangeText, moneyOrDash, moneyText } from './estimate/money.ts';
export { otherStocks } from './estimate/other-stocks.ts';
export { chargeDetail, priceRows, type PriceRow } from './estimate/price/price-lines.ts';
export { pricesByPanel } from './estimate/price/prices-by-panel.ts';
export { clockText, dayAt, dayText, hoursWords, minutesAt } from './estimate/schedule/calendar.ts';
export { laySchedule } from './estimate/schedule/lay-schedule.ts';
export { scheduleDrawing } from './estimate/schedule/schedule-drawing.ts';
export type { Laid } from './estimate/schedule/schedule.ts';
export type { Charge, Price } from './estimate/price/price.ts';
export type { Task, Work } from './estimate/work/task.ts';
export type { FixRow } from './problems.ts';
export type { DrawnRow, Drawing, Mark } from './drawing/drawing.ts';
export { layOut } from './cutting/lay-out.ts';
export { readInstance } from './cutting/read-instance.ts';
export type { CutAnswer } from './cutting/instance.ts';
export { billCsv } from './export/csv.ts';
export { lackingSentence, paperPdf, type Sheet } from './export/paper/paper-pdf.ts';
export {
  htmlPage,
  type FileCommit,
  type PaperContent,
  type PaperSource,
} from './export/paper/paper.ts';
export { papers, type Paper } from './export/paper/papers.ts';
export { canHold } from './cutting/locked/fixed-box.ts';
export { placementOwners } from './estimate/placement-owners.ts';
export { cutDrawings, rowName } from './export/cut-drawings.ts';
export { drawingDxf } from './export/drawing-dxf.ts';
export { drawingPdf } from './export/drawing-pdf.ts';
export { drawingSvg } from './export/drawing-svg.ts';
export { traceOutline, type TraceForm } from './export/trace-outline.ts';
export { jobWorkbook } from './export/xlsx/job-workbook.ts';
export { completionsAt } from './formula/complete.ts';
export { signatureAt } from './formula/signature.ts';
export type { Catalogue, FunctionEntry, HeavyQuestion } from './formula/catalogue.ts';
export { functionsPage } from './formula/functions-page.ts';
export type { CellRef } from './formula/scope.ts';
export type { CellValue } from './formula/value.ts';
export { shapeInWords, sidesInWords } from './geometry/shape-in-words.ts';
export { showShape } from './geometry/shape-text.ts';
export { applyEdits } from './job/apply-edits.ts';
export { changeOrderPaper } from './export/paper/change-order.ts';
export type { Column } from './job/column.ts';
export { columnOf, columnsOf, headColumns } from './job/columns.ts';
export { fileForm, type FileForm } from './job/file-form.ts';
export { freshId } from './job/fresh-id.ts';
export { readFile } from './job/read-file.ts';
export { settingsOf } from './job/settings.ts';
export { upgradeChanges } from './job/upgrade-file.ts';
export type { Edit, FileReading, SourceRow, TextChange } from './job/source.ts';
export { writeEmptyJob } from './job/empty-job.ts';
export {
  handsOf,
  picturedBases,
  picturedPanel,
  type PicturedPanel,
  type PicturedRing,
} from './panel/pictured-panel.ts';
export type { Pattern } from './panel/pattern-marks.ts';
export { jobPatterns } from './panel/patterns.ts';
export { contourDrawing } from './panel/contour-drawing.ts';
export {
  panelSkin,
  panelSkinQuestion,
  skinProfile,
  skinWords,
  type PanelSkin,
  type PanelSkinQuestion,
} from './panel/panel-skin.ts';
export { parkedPanel } from './panel/parked-rings.ts';
export { planDrawing } from './panel/plan-drawing.ts';
export { sectionDrawing } from './panel/section-drawing.ts';
export { stripDrawing } from './panel/strip-drawing.ts';
export { bookOut, type BookOutLine } from './shop/book-out.ts';
export {
  freezeEdits,
  priceDrift,
  pricesToFreeze,
  thawEdits,
  type PriceDrift,
} from './shop/freeze-prices.ts';
export { isNews, matchPrices, priceEdits, type PriceMatch } from './shop/match-prices.ts';
export { readPriceList } from './shop/price-list.ts';
export {
  substituteEdits,
  substituteEffect,
  substitutesFor,
  type SubstituteEffect,
} from './shop/substitute.ts';
export { answerEdits } from './template/answer-asks.ts';
export type { Ask } from './template/ask.ts';
export { jobFromTemplate } from './template/make-job.ts';
export { asksOf } from './template/read-asks.ts';
export { kitEdits } from './template/rows-as-kit.ts';
export { askableCells, templateFromJob } from './template/save-template.ts';
export { askFaults } from './template/settle-ask.ts';
export { ownTemplates, readTemplate, type Template } from './template/template.ts';
export { takeEdits, templateNews } from './template/template-news.ts';
export type { Problem } from './problems.ts';
export type { SkinReply } from './skin/skin-answer.ts';
export { catalogue } from './session/desk.ts';
export { entryText } from './session/entry.ts';
export { steppedText } from './session/knob-step.ts';
export type { HeavyReplies } from './session/heavy-memory.ts';
export { openSession, sessionSteps } from './session/session.ts';
export { type Steps } from './steps.ts';
export { settleNow } from './session/settle-now.ts';
export type { WhatIf } from './session/desk.ts';
export type { Session, SessionChange } from './session/session.ts';
export type { Money } from './session/money-stages.ts';
export { costDriverSteps, costDrivers, type CostDriver } from './session/cost-drivers.ts';
export {
  costDriversDrawing,
  driverMark,
  driverWords,
  priceChangeText,
} from './session/cost-drivers-drawing.ts';
export {
  compareSnapshots,
  type ComparedCell,
  type ComparedJobs,
  type ComparedRow,
} from './session/compare-sessions.ts';
export { openCellHistory, type CellPast } from './sharing/cell-history.ts';
export { namedCell, type TracedCell } from './sharing/cell-trace.ts';
export type { ComparedFigure, ComparedMaterial } from './session/compare-figures.ts';
export { rowKey } from './session/row-key.ts';
export { wantedOutlines } from './session/wants.ts';
export type { LocatedProblem, Snapshot } from './session/snapshot.ts';
export { sameDimension, time as timeDimension } from './units/dimension.ts';
export { dimensionName } from './units/dimension-names.ts';
export type { Quantity, UnitSettings } from './units/quantity.ts';
export { minutesText } from './units/minutes-text.ts';
export { percentChangeText } from './units/percent-text.ts';
export { showQuantity } from './units/show.ts';
export { signedText } from './units/signed-text.ts';
export { completingUnit } from './units/standard-units.ts';
export { calculate, openCalculator } from './workbook/calculate.ts';
export type { AnsweredCell, AnsweredRow } from './workbook/answers.ts';
export { shownCell, shownValue } from './workbook/shown-cell.ts';
export type { Conflict } from './sharing/conflict.ts';
export {
  copiedDriverCommand,
  driverCopy,
  driverName,
  withAttributes,
} from './sharing/merge-setup.ts';
export { openConflicts, settledText, stretchChange } from './sharing/settle-conflicts.ts';
export { compareJobs } from './sharing/compare.ts';

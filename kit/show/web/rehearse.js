// The widget of the rehearsal.
import { Rehearsal } from "./rehearse_view.js";
import { screen } from "./screen.js";

export default screen(Rehearsal, (content, { some_rows: rows = [], some_said: said = [], ...changes }) => {
  Object.assign(content, changes);
  content.rows = content.rows.map((row) => rows.find(({ at }) => at === row.at) ?? row);
  content.said = content.said.map((one) => said.find(({ id }) => id === one.id) ?? one);
});

/** The bar to buy, what it weighs and wastes, and how to cut it. */

import { fieldsOf } from "../engine/tables";
import { GenericScreen } from "../figures/GenericScreen";

export function StockScreen() {
  const shared = new Set([...fieldsOf("sizing"), ...fieldsOf("tooling")].map((field) => field.name));
  const fields = fieldsOf("stock");
  const elsewhere = fields.filter((field) => shared.has(field.name)).map((field) => field.name);
  return <GenericScreen calculation="stock" elsewhere={elsewhere} />;
}

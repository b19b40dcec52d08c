import { ARRIVAL_REASON_WORDS } from '#libs/unit-life';
import { UNIT_PLACE_WORDS } from '#libs/unit-life';
import type { FormState } from '../../platform/pages/form-state.ts';
import { dateText, plainDate } from '../../web/dates.ts';
import { type FieldView, formFields } from '../../web/form-field.ts';
import { moneyText } from '../../web/money-text.ts';
import { urls } from '../../web/urls.ts';
import type { Unit } from '../returns/units.service.ts';
import { ODD_ARRIVALS } from './dto/order.dto.ts';
import type { Order } from './orders.repository.ts';
import type { Variant } from './variants.repository.ts';

interface HeadView {
  title: string;
  lead: string;
  rest: string;
  actions: { href: string; label: string; main?: boolean }[];
}

export interface Place {
  timeZone: string;
  currency: string;
}

export interface OrdersView {
  title: string;
  head: HeadView;
  goodsIn: { action: string; fields: Record<string, FieldView> };
  errors: FormState['summary'];
  due: {
    code: string;
    href: string;
    part: string;
    supplier: string;
    key: string;
    jobHref: string;
    ordered: string;
    came: string;
    page: string;
  }[];
  hasDue: boolean;
  orders: { href: string; number: number; supplier: string; ordered: string; pieces: string }[];
  hasOrders: boolean;
  suppliersHref: string;
}

export function presentOrders(
  goodsIn: FormState,
  { due, orders, place }: { due: readonly Unit[]; orders: readonly Order[]; place: Place },
): OrdersView {
  return {
    title: 'Orders',
    head: {
      title: 'Orders',
      lead: due.length === 0 ? 'Nothing is on its way.' : `${due.length} ${due.length === 1 ? 'piece is' : 'pieces are'} on the way.`,
      rest: 'Goods in: type the code that the order gave the piece, or tap it in the list. Check what is in the box, not what is on it.',
      actions: [
        { href: urls.variants, label: 'Variants' },
        { href: urls.suppliers, label: 'Suppliers' },
      ],
    },
    goodsIn: {
      action: urls.goodsIn,
      fields: formFields(goodsIn, [
        {
          name: 'code',
          label: 'Code of the piece',
          required: true,
          maxlength: 20,
          autocomplete: 'off',
          placeholder: 'KM3-A4Q',
          short: true,
        },
      ]),
    },
    errors: goodsIn.summary,
    due: due.map((unit) => ({
      code: unit.label,
      href: urls.unit(unit.id),
      part: `${unit.variant.partNumber}, ${unit.variant.name}`,
      supplier: unit.variant.supplier.name,
      key: unit.whose,
      jobHref: unit.job ? urls.jobParts(unit.job.id) : '',
      ordered: dateText(unit.createdAt, place.timeZone),
      came: urls.delivery(unit.id, 'came'),
      page: urls.orders,
    })),
    hasDue: due.length > 0,
    orders: orders.map((order) => ({
      href: urls.order(order.id),
      number: order.number,
      supplier: order.supplier.name,
      ordered: dateText(order.orderedAt, place.timeZone),
      pieces: order.lines.map(({ variant }) => variant.partNumber).join(', '),
    })),
    hasOrders: orders.length > 0,
    suppliersHref: urls.suppliers,
  };
}

export interface OrderView {
  title: string;
  head: HeadView;
  page: string;
  units: {
    code: string;
    href: string;
    part: string;
    price: string;
    place: string;
    reason: string;
    back: string;
    isExpected: boolean;
    came: string;
    calledOff: string;
    neverCame: string;
  }[];
  warning: string;
  odd: { action: string; fields: Record<string, FieldView> };
  errors: FormState['summary'];
}

export function presentOrder(
  beside: FormState,
  { order, units, theirs, who, place }: { order: Order; units: readonly Unit[]; theirs: readonly Variant[]; who: string; place: Place },
): OrderView {
  const [first] = units;
  const waiting = units.filter((unit) => unit.place === 'expected').length;
  return {
    title: `Order ${order.number}`,
    page: urls.order(order.id),
    head: {
      title: `Order ${order.number}`,
      lead:
        waiting === 0
          ? `${order.supplier.name}: nothing is on its way any more.`
          : `${order.supplier.name}: ${waiting} of ${units.length} still to come.`,
      rest: `Ordered by ${who} on ${dateText(order.orderedAt, place.timeZone)}${order.expectedOn ? `, due ${plainDate(order.expectedOn)}` : ''}.`,
      actions: [
        { href: urls.orderLabels(order.id), label: 'Print labels' },
        ...(first?.job ? [{ href: urls.jobParts(first.job.id), label: 'To the bench' }] : []),
      ],
    },
    warning: order.supplier.unopenedOnly
      ? `${order.supplier.name} takes back unopened boxes only: leave each box shut until the bench needs it.`
      : '',
    units: units.map((unit) => ({
      code: unit.label,
      href: urls.unit(unit.id),
      part: `${unit.variant.partNumber}, ${unit.variant.name}`,
      price: unit.orderLine ? moneyText(unit.orderLine.priceNet, place.currency) : '',
      place: UNIT_PLACE_WORDS[unit.place],
      reason: unit.arrivalReason === 'ordered' ? '' : ARRIVAL_REASON_WORDS[unit.arrivalReason],
      back: unit.returnBy ? plainDate(unit.returnBy) : '',
      isExpected: unit.place === 'expected',
      came: urls.delivery(unit.id, 'came'),
      calledOff: urls.delivery(unit.id, 'called-off'),
      neverCame: urls.delivery(unit.id, 'never-came'),
    })),
    errors: beside.summary,
    odd: {
      action: `${urls.order(order.id)}/beside`,
      fields: formFields(beside, [
        {
          name: 'variantId',
          label: 'What is in the box',
          options: theirs.map(({ id, partNumber, name }) => ({ value: id, label: `${partNumber}, ${name}` })),
        },
        {
          name: 'reason',
          label: 'Why it came',
          options: ODD_ARRIVALS.map((reason) => ({ value: reason, label: ARRIVAL_REASON_WORDS[reason] })),
        },
      ]),
    },
  };
}

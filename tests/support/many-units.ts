import pg from 'pg';
import type { Connection } from '#libs/db';

/**
 * A workshop's book after years, written by the database itself with its triggers asleep: units in their places with the moves
 * and the money that led there, six in ten gone for good, three in a hundred at suppliers.
 *
 * @param connection as superuser
 */
export async function layOutUnits(connection: Connection, units: number): Promise<void> {
  const client = new pg.Client(connection);
  await client.connect();
  try {
    await client.query(`set session_replication_role = replica`);
    await client.query(PEOPLE);
    await client.query(UNITS, [units]);
    for (const text of [MOVES, ...MONEY]) await client.query(text);
    await client.query(OPEN);
    await client.query('vacuum analyze');
  } finally {
    await client.end();
  }
}

const PEOPLE = `
  insert into workshop (id, name, address_lines, time_zone, currency) values (1, 'Testbed Motors', '{}', 'Europe/Dublin', 'EUR');
  insert into staff (id, name, display_name, role, secret_hash) values (uuidv7(), 'owner', 'Dagny', 'owner', '');
  insert into supplier (id, name, return_days) select uuidv7(), 'Supplier ' || n, 30 from generate_series(1, 25) n;
  insert into part_family (id, key, version, name, features)
    select uuidv7(), 'family-' || n, 1, 'Family ' || n, '{"id":"thermostat","name":"thermostat","features":[]}' from generate_series(1, 6) n;
  insert into part_variant (id, family_id, supplier_id, part_number, name, price_net)
    select uuidv7(), (select id from part_family order by id offset n % 6 limit 1), (select id from supplier order by id offset n % 25 limit 1),
      'TX-' || n, 'Thermostat ' || n, 12 + n % 60 from generate_series(1, 400) n;
  insert into customer (id, name, address_lines) select uuidv7(), 'Customer ' || n, '{}' from generate_series(1, 200) n;
  insert into vehicle (id, customer_id, registration, make, model, engine_code)
    select uuidv7(), (select id from customer order by id offset n % 200 limit 1), 'AB' || n, 'Tamber', 'Orla', 'TK' || n % 40 from generate_series(1, 2000) n;
  insert into job_template (id, key, version, name, definition) values (uuidv7(), 'thermostat', 1, 'Thermostat', '{}');
  insert into job (id, customer_id, vehicle_id, template_id, complaint, stage, created_at, created_by_id)
    select uuidv7(), customer_id, id, (select id from job_template limit 1), 'x', 'squared', now() - interval '1 year', uuidv7() from vehicle;
  insert into catalogue_listing (id, variant_id, engine_code, catalogue)
    select uuidv7(), id, 'TK' || substring(part_number from 4)::int % 40, 'List' from part_variant;`;

/** Pieces that came over five years; those that lie here or are away came lately. */
const UNITS = `
  insert into part_unit (id, code, variant_id, arrival_reason, place, job_id, arrived_at, return_by, created_at, handed_over_at)
  select uuidv7(), 'U' || lpad(n::text, 7, '0'), v.id, 'surplus', p.place, j.id, c.at, c.at::date + 30, c.at,
    case when p.place in ('handed-over', 'gone-for-good') then c.at + interval '12 days' end
  from generate_series(1, $1::int) n
  cross join lateral (select case when n % 100 < 60 then 'gone-for-good' when n % 100 < 90 then 'fitted' when n % 100 < 94 then 'stocked'
    when n % 100 < 97 then 'handed-over' when n % 100 < 98 then 'to-return' when n % 100 < 99 then 'set-aside' else 'written-off' end as place) p
  cross join lateral (select now() - (case when p.place in ('handed-over', 'to-return', 'set-aside') then n % 80 else n % 1800 end || ' days')::interval
    - interval '14 days' as at) c
  join (select id, row_number() over () - 1 as k from part_variant) v on v.k = n % 400
  join (select id, row_number() over () - 1 as k from job) j on j.k = n % 2000`;

const MOVES = `
  insert into unit_move (unit_id, "from", "to", at, evidence)
  select u.id, s."from", s."to", u.created_at + (s.k * 4 || ' days')::interval, case when s."to" = 'handed-over' then 'slip' else '' end
  from part_unit u join (values
    ('gone-for-good', 0, 'expected', 'set-aside'), ('gone-for-good', 1, 'set-aside', 'to-return'), ('gone-for-good', 3, 'to-return', 'handed-over'),
    ('gone-for-good', 6, 'handed-over', 'gone-for-good'), ('fitted', 0, 'expected', 'set-aside'), ('fitted', 1, 'set-aside', 'fitted'),
    ('stocked', 0, 'expected', 'set-aside'), ('stocked', 1, 'set-aside', 'stocked'), ('handed-over', 0, 'expected', 'set-aside'),
    ('handed-over', 1, 'set-aside', 'to-return'), ('handed-over', 3, 'to-return', 'handed-over'), ('to-return', 0, 'expected', 'set-aside'),
    ('to-return', 1, 'set-aside', 'to-return'), ('set-aside', 0, 'expected', 'set-aside'), ('written-off', 0, 'expected', 'set-aside'),
    ('written-off', 1, 'set-aside', 'written-off')) as s (place, k, "from", "to") on s.place = u.place`;

/** Charged on arrival; what is gone was credited, one in fifteen with a loss; what is written off is a loss. */
const MONEY = [
  `insert into unit_money (unit_id, kind, amount_net, at, reference)
   select u.id, 'charged', v.price_net, u.created_at, 'order ' || u.code from part_unit u join part_variant v on v.id = u.variant_id`,
  `insert into unit_money (unit_id, kind, amount_net, at, reference)
   select u.id, 'credited', v.price_net - case when right(u.code, 1) = '3' then 2 else 0 end, u.created_at + interval '24 days', 'credit note'
   from part_unit u join part_variant v on v.id = u.variant_id where u.place = 'gone-for-good'`,
  `insert into unit_money (unit_id, kind, amount_net, at, reference)
   select u.id, 'loss-accepted', 2, u.created_at + interval '24 days', 'credit note' from part_unit u where u.place = 'gone-for-good' and right(u.code, 1) = '3'`,
  `insert into unit_money (unit_id, kind, amount_net, at, why)
   select u.id, 'loss-accepted', v.price_net, u.created_at + interval '20 days', 'lost' from part_unit u join part_variant v on v.id = u.variant_id
   where u.place = 'written-off'`,
];

const OPEN = `
  update part_unit u set open_net = m.open from (
    select unit_id, sum(case when kind = 'charged' then amount_net else -amount_net end) as open from unit_money group by 1) m
  where m.unit_id = u.id and m.open <> 0`;

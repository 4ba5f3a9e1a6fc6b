import type { ComponentProps, ReactNode } from 'react';
import { PageHead } from '@/app/ui/page/page-head';
import { Pager } from '@/app/ui/page/pager';
import { SearchBox } from '@/app/ui/page/search-box';
import { Table } from '@/app/ui/page/table';
import { type Listed, listAddress } from './list-address';

type ListProps<Row> = {
  title: string;
  lead: string;
  /** where the list lives, and what of it is shown */
  listed: Listed;
  search: { id: string; label: string };
  /** which part of what was found is shown */
  filter?: ReactNode;
  table: Omit<ComponentProps<typeof Table<Row>>, 'captionHidden'>;
  /** what is shown where nothing was found */
  instead?: ReactNode;
  total: number;
  perPage: number;
};

/** A page of a long list: its search, the part chosen, the rows, and the way to the other pages. Works without script. */
export function SearchedList<Row>(props: ListProps<Row>) {
  const { title, lead, listed, search, filter, table, instead, total, perPage } = props;
  return (
    <>
      <PageHead title={title} lead={lead} />
      <div className="mb-6 max-w-[42rem]">
        <SearchBox action={listed.path} label={search.label} defaultValue={listed.q} id={search.id} />
      </div>
      {filter}
      <Table captionHidden {...table} />
      {instead}
      <Pager
        page={listed.page}
        pages={Math.ceil(total / perPage)}
        href={(page) => listAddress({ ...listed, page })}
      />
    </>
  );
}

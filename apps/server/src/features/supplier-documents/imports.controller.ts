import { Body, Controller, Get, Param, Post, Redirect, Render } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import { Only } from '../../platform/access/access.decorator.ts';
import { IdPipe } from '../../platform/id.pipe.ts';
import { FormBack } from '../../platform/pages/flash.decorator.ts';
import { Flashes } from '../../platform/pages/flash.ts';
import type { FormState } from '../../platform/pages/form-state.ts';
import { Files } from '../../platform/uploads/files.decorator.ts';
import type { UploadedFile } from '../../platform/uploads/request-files.ts';
import { TakesFiles } from '../../platform/uploads/takes-files.decorator.ts';
import { WorkshopFacts } from '../../platform/workshop-facts.ts';
import { urls } from '../../web/urls.ts';
import { Documents } from './documents.service.ts';
import { ReadingAsDto, UploadDto } from './dto/import.dto.ts';
import { type ImportFormView, presentImportForm } from './import-form.presenter.ts';
import { type ImportView, presentImport } from './import.presenter.ts';
import { Imports } from './imports.service.ts';
import { readingOf } from './reading-of.ts';

const MOST_BYTES = 5 * 1024 * 1024;

/** A supplier's file on its way in: chosen, read as a person says, looked at, taken in. */
@ApiExcludeController()
@Controller('returns-shelf/documents')
@Only('desk', 'owner')
export class ImportsController {
  constructor(
    private readonly imports: Imports,
    private readonly documents: Documents,
    private readonly workshop: WorkshopFacts,
    private readonly flashes: Flashes,
  ) {}

  @Get('file')
  @Render('features/supplier-documents/views/import-form.hbs')
  async ask(@FormBack('file') form: FormState): Promise<ImportFormView> {
    return presentImportForm(form, await this.documents.suppliers());
  }

  @Post('file')
  @TakesFiles({ mostFiles: 1, mostBytes: MOST_BYTES })
  @Redirect('/', 303)
  async upload(@Body() { supplierId, kind }: UploadDto, @Files('file') files: readonly UploadedFile[]): Promise<{ url: string }> {
    return { url: urls.importedFile(await this.imports.upload(supplierId, kind, files[0])) };
  }

  @Get('files/:id')
  @Render('features/supplier-documents/views/import.hbs')
  async look(@Param('id', IdPipe) id: string, @FormBack('reading') form: FormState): Promise<ImportView> {
    const [preview, { currency }] = await Promise.all([this.imports.preview(id), this.workshop.get()]);
    return presentImport(preview, { form, currency });
  }

  @Post('files/:id/reading')
  @Redirect('/', 303)
  async readAs(@Param('id', IdPipe) id: string, @Body() input: ReadingAsDto): Promise<{ url: string }> {
    await this.imports.readAs(id, readingOf(input));
    return { url: urls.importedFile(id) };
  }

  @Post('files/:id/commit')
  @Redirect('/', 303)
  async commit(@Param('id', IdPipe) id: string): Promise<{ url: string }> {
    const papers = await this.imports.commit(id);
    const words = papers === 0 ? 'Nothing new was in it.' : papers === 1 ? 'One paper came in.' : `${papers} papers came in.`;
    return { url: await this.flashes.say(urls.importedFile(id), words) };
  }
}

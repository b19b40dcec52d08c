import { Global, Module } from '@nestjs/common';
import { PdfBrowser } from './pdf-browser.ts';
import { PdfRenderer } from './pdf-renderer.ts';

@Global()
@Module({ providers: [PdfBrowser, PdfRenderer], exports: [PdfRenderer] })
export class PdfModule {}

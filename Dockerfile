# The server for docker-compose.yml. NOT RUN so far: it was written where there is no container engine.
FROM node:22-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json .npmrc .puppeteerrc.cjs ./
RUN npm ci
COPY . .
RUN npm run generate && npm run build && npm prune --omit=dev

FROM node:22-bookworm-slim
RUN apt-get update \
  && apt-get install -y --no-install-recommends chromium-headless-shell \
  && rm -rf /var/lib/apt/lists/* \
  && install -d -o node -g node /data
WORKDIR /app
COPY --from=build /app/package.json ./
COPY --from=build /app/node_modules ./node_modules
COPY --from=build /app/prisma ./prisma
COPY --from=build /app/apps/launch/browser.mjs ./apps/launch/
COPY --from=build /app/dist ./dist
USER node
ENV NODE_ENV=production DATA_DIR=/data RUNWARM_BROWSER=/usr/bin/chromium-headless-shell
HEALTHCHECK --start-period=60s CMD ["node", "-e", "fetch('http://127.0.0.1:3000/api/v1/health').then(r => process.exit(r.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "--enable-source-maps", "--disable-warning=DeprecationWarning", "dist/apps/server/src/main.js"]

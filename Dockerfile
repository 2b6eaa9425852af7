# Teemer as a small image: the bundle, its native drawing library and its fonts. test/image/build.ts takes the same steps
# without an engine. The bot needs DISCORD_TOKEN; the volume is what it remembers, unless DATABASE_URL names a database.
#
#   docker build -t teemer .
#   docker run --rm --env DISCORD_TOKEN teemer node dist/register.js
#   docker run -d --env DISCORD_TOKEN --volume teemer:/home/node/data teemer

FROM node:24.21.0-bookworm-slim AS build
WORKDIR /build
COPY package.json package-lock.json ./
RUN npm ci --no-audit --no-fund
COPY . .
RUN npm run bundle

FROM node:24.21.0-bookworm-slim
WORKDIR /app
ENV NODE_ENV=production TEEMER_DATA=/home/node/data TEEMER_PORT=8080 TEEMER_LOG=info
COPY --from=build /build/package.json ./
COPY --from=build /build/dist ./dist
COPY --from=build /build/node_modules/@resvg ./node_modules/@resvg
COPY --from=build /build/node_modules/@matrix-org/matrix-sdk-crypto-wasm ./node_modules/@matrix-org/matrix-sdk-crypto-wasm
COPY --from=build /build/node_modules/dejavu-fonts-ttf ./node_modules/dejavu-fonts-ttf
USER node
RUN mkdir -m 700 /home/node/data
VOLUME /home/node/data
EXPOSE 8080
# Whether it lives. A lost connection it mends itself; /readyz tells.
HEALTHCHECK --interval=30s --timeout=5s --start-period=20s \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.TEEMER_PORT}/healthz`).then(({ ok }) => process.exit(ok ? 0 : 1), () => process.exit(1))"]
# V8's helpers would collect the drawing thread's garbage on the core that people wait for.
CMD ["node", "--single-threaded-gc", "--v8-pool-size=1", "dist/main.js"]

"""Another client than the SDK's own: joins a room with the bot, asks, and prints what it heard as JSON.

    matrix_asker.py URL USER PASSWORD BOT plain|encrypted LINE...
"""

import asyncio
import hashlib
import json
import sys
import tempfile

from nio import (
    AsyncClient,
    AsyncClientConfig,
    MegolmEvent,
    RoomEncryptedImage,
    RoomMessageImage,
    RoomMessageNotice,
)
from nio.crypto.attachments import decrypt_attachment

url, user, password, bot, kind, *lines = sys.argv[1:]
secret = kind == "encrypted"


async def until(done, what, patience_s=40):
    for _ in range(patience_s * 20):
        if done():
            return
        await asyncio.sleep(0.05)
    raise SystemExit(f"waited in vain for {what}")


async def picture_of(client, event):
    answer = await client.download(event.url)
    body = answer.body
    if isinstance(event, RoomEncryptedImage):
        body = decrypt_attachment(body, event.key["k"], event.hashes["sha256"], event.iv)
    return {"sha256": hashlib.sha256(body).hexdigest(), "bytes": len(body), "body": event.body}


async def main(folder):
    config = AsyncClientConfig(encryption_enabled=secret, store_sync_tokens=False)
    client = AsyncClient(url, user, store_path=folder, config=config)
    await client.login(password)
    heard, pictures, unread = [], [], []

    async def take(room, event):
        if event.sender != bot:
            return
        if isinstance(event, RoomMessageNotice):
            heard.append(event)
        elif isinstance(event, MegolmEvent):
            unread.append(event.event_id)
        else:
            pictures.append(await picture_of(client, event))

    client.add_event_callback(take, (RoomMessageNotice, RoomMessageImage, RoomEncryptedImage, MegolmEvent))
    await client.sync(timeout=0, full_state=True)
    syncing = asyncio.create_task(client.sync_forever(timeout=2000))
    state = [{"type": "m.room.encryption", "state_key": "", "content": {"algorithm": "m.megolm.v1.aes-sha2"}}]
    made = await client.room_create(invite=[bot], initial_state=state if secret else [])
    room = made.room_id

    def there():
        known = client.rooms.get(room)
        return known is not None and bot in known.users and known.users[bot].invited is False and known.encrypted == secret

    await until(there, "the bot in the room")
    said = {}
    for line in lines:
        sent = await client.room_send(
            room, "m.room.message", {"msgtype": "m.text", "body": line}, ignore_unverified_devices=True
        )
        said[line] = sent.event_id

        def answers(question=sent.event_id):
            return [
                event
                for event in heard
                if event.source["content"].get("m.relates_to", {}).get("m.in_reply_to", {}).get("event_id") == question
            ]

        await until(answers, f"an answer to {line}")
    await asyncio.sleep(2)
    syncing.cancel()
    await client.close()
    notices = [
        {"id": event.event_id, "body": event.body, "content": event.source["content"], "secret": event.decrypted}
        for event in heard
    ]
    print(json.dumps({"said": said, "notices": notices, "pictures": pictures, "unread": unread}))


with tempfile.TemporaryDirectory() as folder:
    asyncio.run(main(folder))

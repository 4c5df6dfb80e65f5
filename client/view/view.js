// The page is asked for anew when the job has changed.
"use strict";
{
  const own = document.getElementById("view").dataset.version;
  const events = new EventSource("/events");
  events.onmessage = (e) => { if (e.data !== own) location.reload(); };
  addEventListener("pagehide", () => events.close());
}
